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

    // Of a run whose wire is open: nothing is computed with it.
    private static readonly WireSize s_standIn = WireTable.Of(WireConstruction.MetricCable)[^1];

    /// <summary>The runs of the rows that are valid; the others are logged.</summary>
    public static ImmutableArray<Run> Read(ListTable table, bool wiresMayBeOpen)
    {
        if (!wiresMayBeOpen)
            RefuseOpen([.. table.Rows.Where(r => r.Text("wire") is null)]);
        var names = new UniqueNames("run", "run");
        var runs = ImmutableArray.CreateBuilder<Run>();
        foreach (ListRow row in table.Rows)
        {
            string name = names.Take(row);
            (string from, string to) = PointCells.Pair(row);
            bool isOpen = row.Text("wire") is null;
            WireSize? wire = isOpen ? s_standIn : Wire(row);
            Length? length = row.Required("length") is null ? null : row.Quantity("length", CellRanges.RunLength);
            int? joints = row.Whole("joints", 0, 1000);
            ElectricResistance? joint = row.Quantity("joint resistance", CellRanges.Ohms);
            int? bundle = row.Whole("bundle", 1, 1000);
            Ratio? loading = row.Quantity("bundle loading", CellRanges.BundleLoading);
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
                    WireIsOpen = isOpen,
                    Length = length.Value,
                    Joints = joints ?? 0,
                    JointResistance = joint ?? (joints > 0 ? BikeDefaults.JointResistance : ElectricResistance.Zero),
                    AssumesJoints = joints > 0 && joint is null,
                    Bundle = bundle ?? 1,
                    BundleLoading = loading,
                    Colour = colour,
                    Cable = cable,
                    Notes = row.Text(ListSchema.Notes),
                    FromEnd = row.Text("from end"),
                    ToEnd = row.Text("to end"),
                }
            );
        }

        return runs.ToImmutable();
    }

    // One fault for all of them.
    private static void RefuseOpen(ListRow[] open)
    {
        if (open.Length > 0)
            open[0]
                .Fault(
                    "wire",
                    null,
                    open.Length == 1
                        ? "the cell is blank"
                        : $"the cell is blank, and in "
                            + $"{open.Length - 1} more {(open.Length == 2 ? "row" : "rows")}",
                    "a wire size such as 1.5 mm2; 'wire " + "BIKE --lists FOLDER' chooses sizes for blank cells"
                );
    }

    private static WireSize? Wire(ListRow row)
    {
        if (!WireText.TryParse(row.Text("wire")!, out WireSize? wire, out TextProblem? problem))
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
