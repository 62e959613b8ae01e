using UnitsNet;

namespace Lighting.Calc;

/// <summary>A permanent-magnet alternator on a resistive load: I = Imax·x/√(1 + x²), x = n/n0.</summary>
/// <remarks>
/// I: output, A. Imax: limiting current at high speed, E/(ωL) = k/L. n: engine speed, rpm. n0: the speed at which the
/// winding's reactance equals the resistance of the loop. Source: synchronous-machine theory, an EMF E = k·ω behind a
/// resistance and a reactance ωL, so that EMF and reactance grow together and the current levels off. The closed
/// form for the speed at which it gives I is n = n0·r/√(1 − r²), r = I/Imax. Valid while the magnetic circuit is
/// unsaturated and the load voltage is well below the EMF at speed; it has no cut-in.
/// </remarks>
internal sealed record PermanentMagnetAlternator
{
    /// <summary>Creates an alternator.</summary>
    public PermanentMagnetAlternator(ElectricCurrent maximumCurrent, RotationalSpeed cornerSpeed)
    {
        if (!(maximumCurrent.Amperes > 0))
            throw new ArgumentOutOfRangeException(
                nameof(maximumCurrent),
                maximumCurrent,
                "Maximum current must be greater than zero."
            );
        if (!(cornerSpeed.RevolutionsPerMinute > 0))
            throw new ArgumentOutOfRangeException(
                nameof(cornerSpeed),
                cornerSpeed,
                "Corner speed must be greater than zero."
            );
        MaximumCurrent = maximumCurrent;
        CornerSpeed = cornerSpeed;
    }

    /// <summary>Imax: limiting current at high speed.</summary>
    public ElectricCurrent MaximumCurrent { get; }

    /// <summary>n0: speed for 1/√2 of <see cref="MaximumCurrent"/>.</summary>
    public RotationalSpeed CornerSpeed { get; }

    /// <summary>Output at an engine speed.</summary>
    public ElectricCurrent OutputAt(RotationalSpeed speed) =>
        ElectricCurrent.FromAmperes(
            MaximumCurrent.Amperes * Shape(speed.RevolutionsPerMinute / CornerSpeed.RevolutionsPerMinute)
        );

    /// <summary>Speed for an output current; null at <see cref="MaximumCurrent"/> and above.</summary>
    public RotationalSpeed? SpeedFor(ElectricCurrent current)
    {
        double ratio = current.Amperes / MaximumCurrent.Amperes;
        if (ratio >= 1)
            return null;
        return CornerSpeed * (ratio <= 0 ? 0 : ratio / Math.Sqrt(1 - ratio * ratio));
    }

    internal static double Shape(double x) => x / Math.Sqrt(1 + x * x);
}
