using System.Globalization;

namespace Lighting.Calc.Tests.Published;

/// <summary>Holds a computed value against a printed one, and remembers both for the table of accuracies.</summary>
internal static class Publication
{
    private static readonly AsyncLocal<PublishedCheck?> s_noted = new();

    /// <summary>Runs a check and returns what it compared.</summary>
    public static PublishedCheck Compared(Action check)
    {
        var noted = new PublishedCheck();
        s_noted.Value = noted;
        try
        {
            check();
        }
        finally
        {
            s_noted.Value = null;
        }

        return noted;
    }

    /// <summary>The rows of a table of which a check takes its printed side.</summary>
    public static IEnumerable<TableRow> Rows(string table)
    {
        s_noted.Value?.Tables.Add(table);
        return PublishedTable.Load(table).Read();
    }

    /// <summary>The computed value differs from the printed one by no more than the tolerance.</summary>
    public static void Meets(double printed, double computed, double tolerance)
    {
        Note(printed, computed, tolerance, isMet: true);
        Assert.Equal(printed, computed, tolerance);
    }

    /// <summary>The computed value differs from the printed one by no more than a share of it.</summary>
    public static void MeetsWithin(double share, double printed, double computed) =>
        Meets(printed, computed, share * Math.Abs(printed));

    /// <summary>A misfit: the model is off by more than the print is rounded, and by no more than a stated
    /// share.</summary>
    public static void Misses(double printed, double computed, double rounding, double mostShare)
    {
        Note(printed, computed, mostShare * Math.Abs(printed), isMet: false);
        Assert.Equal(printed, computed, mostShare * Math.Abs(printed));
        Assert.True(
            Math.Abs(printed - computed) > rounding,
            string.Create(CultureInfo.InvariantCulture, $"{printed} is met by {computed}: no misfit.")
        );
    }

    /// <summary>The computed value meets the printed one within its rounding, or is a misfit by no more than a stated
    /// share.</summary>
    public static void MeetsOrMisses(double printed, double computed, double rounding, double mostShare)
    {
        if (Math.Abs(printed - computed) <= rounding)
            Meets(printed, computed, rounding);
        else
            Misses(printed, computed, rounding, mostShare);
    }

    /// <summary>The computed value lies within two printed limits.</summary>
    public static void Bounds(double printedLow, double printedHigh, double computed)
    {
        Add(new PublishedFigure(null, null));
        Assert.InRange(computed, printedLow, printedHigh);
    }

    /// <summary>The choice is the printed one.</summary>
    public static void Chooses(string printed, string? chosen)
    {
        Add(new PublishedFigure(null, null));
        Assert.Equal(printed, chosen);
    }

    /// <summary>A choice that is not the printed one, but a stated other.</summary>
    public static void ChoosesOther(string printed, string? other, string? chosen)
    {
        Add(new PublishedFigure(null, null, IsMet: false));
        Assert.NotEqual(printed, other);
        Assert.Equal(other, chosen);
    }

    /// <summary>Of a printed table of choices all but so many are met.</summary>
    public static void ChoosesAllBut(int misses, IReadOnlyCollection<(string Printed, string? Chosen)> cells)
    {
        foreach ((string printed, string? chosen) in cells)
            Add(new PublishedFigure(null, null, printed == chosen));
        Assert.Equal(misses, cells.Count(c => c.Printed != c.Chosen));
    }

    private static void Note(double printed, double computed, double tolerance, bool isMet) =>
        Add(
            new PublishedFigure(
                printed == 0 ? null : Math.Abs(computed / printed - 1),
                printed == 0 ? null : tolerance / Math.Abs(printed),
                isMet
            )
        );

    private static void Add(PublishedFigure figure) => s_noted.Value?.Figures.Add(figure);
}
