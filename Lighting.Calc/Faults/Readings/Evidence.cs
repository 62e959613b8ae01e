namespace Lighting.Calc;

/// <summary>A reading beside what every fault predicts for it.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Place">Where it was taken.</param>
/// <param name="Value">Voltage, current or the logarithm of resistance; for a look its number.</param>
/// <param name="Predicted">The predictions.</param>
internal sealed record Evidence(Reading Reading, TestPlace Place, double Value, Column Predicted)
{
    public bool IsLook => Place.Instrument.IsLook();
}
