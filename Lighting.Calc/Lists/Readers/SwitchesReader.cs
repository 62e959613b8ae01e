using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Reads <c>switches.csv</c>: the contacts of the switches.</summary>
internal static class SwitchesReader
{
    private const string No = "no";
    private static readonly char[] s_reserved = ['=', ';', '|'];

    /// <summary>The contacts of the rows that are valid; the others are logged.</summary>
    public static ImmutableArray<SwitchContact> Read(ListTable table)
    {
        var seen = new Dictionary<string, string>(Name.Comparer);
        var contacts = ImmutableArray.CreateBuilder<SwitchContact>();
        foreach (ListRow row in table.Rows)
        {
            string name = row.Required("switch") ?? "";
            if (name.IndexOfAny(s_reserved) >= 0)
                row.Fault("switch", name, "holds one of '=', ';' and '|', which conditions use", null);
            (string from, string to) = PointCells.Pair(row);
            ImmutableArray<string> positions = Positions(row);
            ElectricResistance? resistance = row.Quantity("resistance", CellRanges.Ohms);
            bool hasOff = row.Word("has off", "yes or no", ("yes", true), (No, false)) ?? true;
            bool? momentary = row.Word("momentary", "yes or no", ("yes", true), (No, false));
            if (!hasOff && positions.Contains(SwitchDefinition.Off, Name.Comparer))
                row.Fault("has off", No, $"contradicts 'closed in', which names '{SwitchDefinition.Off}'", null);
            if (row.IsFaulty)
                continue;
            var contact = new SwitchContact
            {
                Switch = name,
                From = from,
                To = to,
                ClosedIn = positions,
                Resistance = resistance ?? ElectricResistance.Zero,
                HasOff = hasOff,
                Momentary = momentary,
                Notes = row.Text(ListSchema.Notes),
            };
            if (seen.TryAdd(contact.Name, row.Where))
                contacts.Add(contact);
            else
                row.Fault(
                    "switch",
                    contact.Name,
                    $"is the contact on {seen[contact.Name]} already",
                    "join its positions with '|' in one row"
                );
        }

        return contacts.ToImmutable();
    }

    /// <summary>The positions a row names; empty, with the fault logged, when the cell does not hold
    /// positions.</summary>
    private static ImmutableArray<string> Positions(ListRow row)
    {
        if (row.Required("closed in") is not { } text)
            return [];
        ImmutableArray<string> positions = Split(text);
        if (positions.Any(p => p.Length == 0 || p.IndexOfAny(s_reserved) >= 0))
            row.Fault(
                "closed in",
                text,
                "is not a list of positions",
                "expected positions joined by '|', such as low|high"
            );
        else if (positions.Distinct(Name.Comparer).Count() < positions.Length)
            row.Fault("closed in", text, "names a position twice", null);
        else if (positions.Contains(SwitchDefinition.Off, Name.Comparer))
            row.Caution(
                "closed in",
                text,
                $"closes the contact in '{SwitchDefinition.Off}', the position of a switch at rest",
                null
            );
        return positions;
    }

    /// <summary>Whether a row says that its switch cannot be off.</summary>
    public static bool SaysNoOff(ListRow row) =>
        string.Equals(row.Text("has off"), No, StringComparison.OrdinalIgnoreCase);

    /// <summary>A cell's positions.</summary>
    public static ImmutableArray<string> Split(string text) => [.. text.Split('|', StringSplitOptions.TrimEntries)];
}
