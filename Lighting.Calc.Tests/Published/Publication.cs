namespace Lighting.Calc.Tests.Published;

/// <summary>Holds a computed value against a printed one, and remembers both for the table of accuracies.</summary>
internal static class Publication
{
    private static readonly AsyncLocal<List<PublishedFigure>?> s_noted = new();

    /// <summary>Runs a check and returns what it compared.</summary>
    public static IReadOnlyList<PublishedFigure> Compared(Action check)
    {
        var noted = new List<PublishedFigure>();
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

    /// <summary>The computed value differs from the printed one by no more than the tolerance.</summary>
    public static void Meets(double printed, double computed, double tolerance)
    {
        Note(
            printed == 0 ? null : Math.Abs(computed / printed - 1),
            printed == 0 ? null : tolerance / Math.Abs(printed)
        );
        Assert.Equal(printed, computed, tolerance);
    }

    /// <summary>The computed value lies within two printed limits.</summary>
    public static void Bounds(double printedLow, double printedHigh, double computed)
    {
        Note(null, null);
        Assert.InRange(computed, printedLow, printedHigh);
    }

    /// <summary>The choice is the printed one.</summary>
    public static void Chooses(string printed, string? chosen)
    {
        Note(null, null);
        Assert.Equal(printed, chosen);
    }

    private static void Note(double? deviation, double? allowed) =>
        s_noted.Value?.Add(new PublishedFigure(deviation, allowed));
}
