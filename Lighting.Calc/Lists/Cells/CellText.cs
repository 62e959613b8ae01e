namespace Lighting.Calc;

/// <summary>The text of a cell: trimmed, its inner white space folded, its guard against spreadsheet formulas removed
/// or added.</summary>
internal static class CellText
{
    private const string FormulaStarts = "=+-@";

    /// <summary>A cell without surrounding white space, each run of white space inside it as one space, and without its
    /// formula guard.</summary>
    public static string Clean(string cell)
    {
        string folded = IsFolded(cell)
            ? cell
            : string.Join(' ', cell.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return folded.StartsWith('\'') && StartsLikeFormula(folded) ? folded[1..] : folded;
    }

    /// <summary>A text as a cell that no spreadsheet runs as a formula: an apostrophe precedes it where it might be
    /// one.</summary>
    public static string Guard(string text) => StartsLikeFormula(text) ? $"'{text}" : text;

    /// <summary>What is wrong with a cell whatever its column; null where nothing is.</summary>
    public static string? ProblemOf(string cell) =>
        cell.Length > ListLimits.CellCharacters ? $"is longer than {ListLimits.CellCharacters} characters"
        : VisibleText.HasHidden(cell) ? VisibleText.Problem
        : null;

    // As most cells are: every white space in it a single space between two other characters.
    private static bool IsFolded(string cell)
    {
        bool afterSpace = true;
        foreach (char c in cell)
        {
            bool isSpace = char.IsWhiteSpace(c);
            if (isSpace && (afterSpace || c != ' '))
                return false;
            afterSpace = isSpace;
        }

        return cell.Length == 0 || !afterSpace;
    }

    private static bool StartsLikeFormula(string text)
    {
        string bare = text.TrimStart('\'');
        return bare.Length > 0 && FormulaStarts.Contains(bare[0], StringComparison.Ordinal);
    }
}
