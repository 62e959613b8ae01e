using System.Collections.Immutable;

namespace Lighting.Calc.Lists;

/// <summary>A list as read: its rows of text under known columns.</summary>
internal sealed record ListTable(ListSchema Schema, string File, ImmutableArray<ListRow> Rows);
