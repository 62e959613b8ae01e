namespace Lighting.Calc;

/// <summary>The figures of <c>tables/constants.csv</c> that swaps are judged by; each row has its source
/// there.</summary>
internal static class SwapConstants
{
    /// <summary>Shares of the nominal load: under the first a thermal flasher stops, from the second it keeps its
    /// rate.</summary>
    public static readonly double FlasherStops = Constants.Of("flasher_min_load");

    public static readonly double FlasherIsSure = Constants.Of("flasher_sure_load");

    /// <summary>Flashes a minute that regulations ask for.</summary>
    public static readonly double LowestFlashRate = Constants.Of("flash_rate_min");

    public static readonly double HighestFlashRate = Constants.Of("flash_rate_max");

    /// <summary>The least of a flasher for a fixed load, whose contact is closed at rest.</summary>
    public static readonly double LowestFixedLoadFlashRate = Constants.Of("flash_rate_min_fixed_load");

    /// <summary>Rated watts of a load resistor over its heat while lit.</summary>
    public static readonly double ResistorMargin = Constants.Of("resistor_rating_margin");
}
