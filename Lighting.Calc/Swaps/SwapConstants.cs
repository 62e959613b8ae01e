namespace Lighting.Calc;

/// <summary>The figures of <c>tables/constants.csv</c> that swaps are judged by; each row has its source
/// there.</summary>
internal static class SwapConstants
{
    /// <summary>Shares of the nominal load: under the first a thermal flasher stops, from the second it keeps its
    /// rate.</summary>
    public static readonly double FlasherStops = Value("flasher_min_load");

    public static readonly double FlasherIsSure = Value("flasher_sure_load");

    /// <summary>Flashes a minute that regulations ask for.</summary>
    public static readonly double LowestFlashRate = Value("flash_rate_min");

    public static readonly double HighestFlashRate = Value("flash_rate_max");

    /// <summary>The least of a flasher for a fixed load, whose contact is closed at rest.</summary>
    public static readonly double LowestFixedLoadFlashRate = Value("flash_rate_min_fixed_load");

    /// <summary>Rated watts of a load resistor over its heat while lit.</summary>
    public static readonly double ResistorMargin = Value("resistor_rating_margin");

    /// <summary>Highest volts of a sound regulator on 12 V; scale with the system's volts.</summary>
    public static readonly double HighestRegulatedVolts = Value("v_reg_12_max");

    private static double Value(string symbol) =>
        PublishedTable.Load("constants").Read().Single(r => r.Text("symbol") == symbol).Number("value");
}
