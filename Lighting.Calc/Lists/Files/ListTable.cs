using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A list as read: its rows of text under known columns.</summary>
/// <param name="Schema">The list it is.</param>
/// <param name="File">Name in messages.</param>
/// <param name="Rows">Its rows, blank ones left out.</param>
/// <param name="IsWhole">Whether every row could be split into cells; where not, some are missing here.</param>
internal sealed record ListTable(ListSchema Schema, string File, ImmutableArray<ListRow> Rows, bool IsWhole);
