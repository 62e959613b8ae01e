using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Reads <c>runs.csv</c>: the wires.</summary>
internal static class RunsReader
{
    private static readonly string s_colours =
        $"expected {string.Join(", ", WireColour.SingleCodes)}, a word such as red, a base and its tracer such as "
        + "GN/RD or green/red, or two codes as IEC 60757 joins them, such as RDBU";

    /// <summary>The words for the kinds of cable.</summary>
    public static readonly (string Word, CableKind Value)[] Cables =
    [
        ("ordinary", CableKind.Ordinary),
        ("thin wall", CableKind.ThinWall),
        ("free air", CableKind.FreeAir),
    ];

    /// <summary>The runs of the rows that are valid; the others are logged.</summary>
    public static ImmutableArray<Run> Read(ListTable table)
    {
        var names = new UniqueNames("run", "run");
        var runs = ImmutableArray.CreateBuilder<Run>();
        foreach (ListRow row in table.Rows)
        {
            string name = names.Take(row);
            (string from, string to) = PointCells.Pair(row);
            WireSize? wire = Wire(row);
            Length? length = row.Required("length") is null ? null : row.Quantity("length", CellRanges.RunLength);
            int? joints = row.Whole("joints", 0, 1000);
            ElectricResistance? joint = row.Quantity("joint resistance", CellRanges.Ohms);
            int? bundle = row.Whole("bundle", 1, 1000);
            WireColour? colour = Colour(row);
            CableKind? cable = row.Word("cable", "a kind of cable", Cables);
            if (row.IsFaulty || wire is null || length is null)
                continue;
            runs.Add(
                new Run
                {
                    Name = name,
                    From = from,
                    To = to,
                    Wire = wire,
                    Length = length.Value,
                    Joints = joints ?? 0,
                    JointResistance = joint ?? (joints > 0 ? BikeDefaults.JointResistance : ElectricResistance.Zero),
                    AssumesJoints = joints > 0 && joint is null,
                    Bundle = bundle ?? 1,
                    Colour = colour,
                    Cable = cable,
                    Notes = row.Text(ListSchema.Notes),
                }
            );
        }

        return runs.ToImmutable();
    }

    private static WireSize? Wire(ListRow row)
    {
        if (row.Required("wire") is not { } text)
            return null;
        if (!WireText.TryParse(text, out WireSize? wire, out TextProblem? problem))
            row.Fault("wire", problem);
        return wire;
    }

    private static WireColour? Colour(ListRow row)
    {
        if (row.Text("colour") is not { } text)
            return null;
        if (!WireColour.TryFind(text, out WireColour? colour))
            row.Fault("colour", text, "is not a colour", s_colours, WireColour.Nearest(text));
        return colour;
    }
}
