namespace Lighting.Calc;

/// <summary>The places of a sample's results, and of its verdicts, among all of them.</summary>
internal sealed class QuantityPlaces(SamplingPlan plan)
{
    private readonly int _lamps = plan.Lamps.Length;
    private readonly int _fuses = plan.Bike.Fuses.Length;

    /// <summary>Lowest volts of a lamp, by place in <see cref="SamplingPlan.Lamps"/>.</summary>
    public int LampVolts(int lamp) => lamp;

    /// <summary>Its light at those volts; zero throughout for a load that gives none.</summary>
    public int LampLight(int lamp) => _lamps + lamp;

    /// <summary>The share of the source's volts that is lost before it.</summary>
    public int LampDrop(int lamp) => 2 * _lamps + lamp;

    public int FuseAmperes(int fuse) => 3 * _lamps + fuse;

    public int BreakEvenRpm => 3 * _lamps + _fuses;

    public int RideAmpereHours => BreakEvenRpm + 1;

    public int Quantities => RideAmpereHours + 1;

    /// <summary>Whether a lamp loses no more than allowed.</summary>
    public int DropHolds(int lamp) => lamp;

    /// <summary>Whether a filament stays under the volts that burn it, or an LED driver holds its power.</summary>
    public int LampHolds(int lamp) => _lamps + lamp;

    public int FuseCarries(int fuse) => 2 * _lamps + fuse;

    public int Covered => 2 * _lamps + _fuses;

    public int RideHolds => Covered + 1;

    /// <summary>All of them together.</summary>
    public int All => RideHolds + 1;

    public int Verdicts => All + 1;
}
