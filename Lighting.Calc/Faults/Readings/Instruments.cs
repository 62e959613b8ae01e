namespace Lighting.Calc;

/// <summary>What instruments have in common.</summary>
internal static class Instruments
{
    /// <summary>Whether a person judges light, where other instruments show a number.</summary>
    public static bool IsLook(this Instrument instrument) =>
        instrument
            is Instrument.Visual
                or Instrument.TestLamp
                or Instrument.GoodLamp
                or Instrument.Bench
                or Instrument.BenchReversed
                or Instrument.Wiggle;
}
