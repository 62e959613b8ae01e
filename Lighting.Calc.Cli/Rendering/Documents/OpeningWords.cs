using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>An opening time in a cell's few words: a band, or what is known of one.</summary>
internal static class OpeningWords
{
    public static string Of(OpeningTime time) =>
        (time.Fastest, time.Slowest) switch
        {
            (null, null) => "may never open",
            ({ } fastest, null) => $"{Seconds(fastest)} or never",
            (null, { } slowest) => $"up to {Seconds(slowest)}",
            ({ } fastest, { } slowest) => $"{Seconds(fastest)} to {Seconds(slowest)}",
        };

    private static string Seconds(Duration time) => Figures.TwoFigures(time.Seconds);
}
