using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Reads <c>fuses.csv</c>: the fuses; without runs at most one, which feeds everything.</summary>
internal static class FusesReader
{
    /// <summary>The fuses of the rows that are valid; the others are logged.</summary>
    /// <param name="table">The list.</param>
    /// <param name="hasRuns">Whether the bike has runs, so that every fuse needs its two points.</param>
    public static ImmutableArray<Fuse> Read(ListTable table, bool hasRuns)
    {
        var names = new UniqueNames("fuse", "fuse");
        var fuses = ImmutableArray.CreateBuilder<Fuse>();
        foreach (ListRow row in table.Rows)
        {
            string name = names.Take(row);
            if (!hasRuns && row != table.Rows[0])
                row.Fault(
                    "fuse",
                    name,
                    $"is a second fuse, after the one on {table.Rows[0].Where}",
                    "a bike with several fuses needs runs.csv to show what each fuse feeds"
                );
            bool points = hasRuns || row.Text("from") is not null || row.Text("to") is not null;
            (string From, string To)? ends = points ? PointCells.Pair(row) : null;
            ElectricCurrent? rating = row.Required("rating") is null
                ? null
                : row.Quantity("rating", CellRanges.FuseAmps);
            FuseStyle? style = row.Word(
                "style",
                "a style of fuse",
                ("blade", FuseStyle.Blade),
                ("mini", FuseStyle.Mini),
                ("maxi", FuseStyle.Maxi),
                ("glass", FuseStyle.Glass)
            );
            ElectricResistance? resistance = row.Quantity("resistance", CellRanges.Ohms);
            bool? blow = row.Word("marked", "a marking", ("continuous", false), ("blow", true));
            if (blow == true && style != FuseStyle.Glass)
                row.Fault(
                    "marked",
                    "blow",
                    "is for a glass fuse alone",
                    "blade fuses are marked with their continuous rating"
                );
            if (row.IsFaulty || rating is null)
                continue;
            fuses.Add(
                new Fuse
                {
                    Name = name,
                    From = ends?.From,
                    To = ends?.To,
                    Rating = rating.Value,
                    Style = style ?? FuseStyle.Blade,
                    Resistance = resistance,
                    IsMarkedWithBlowingCurrent = blow == true,
                    Notes = row.Text(ListSchema.Notes),
                }
            );
        }

        return fuses.ToImmutable();
    }
}
