namespace Lighting.Calc;

/// <summary>What the charging system can give at one engine speed in one setting, against the voltage of the
/// bus.</summary>
/// <param name="Rpm">Engine speed.</param>
/// <param name="AmperesAt">Current it can give at a voltage, zero or more.</param>
internal sealed record GeneratorOutput(double Rpm, Func<double, double> AmperesAt)
{
    /// <summary>Change of the current with the voltage, zero or less.</summary>
    public double SlopeAt(double volts)
    {
        double step = 1e-5 * Math.Max(1, Math.Abs(volts));
        return Math.Min(0, (AmperesAt(volts + step) - AmperesAt(volts - step)) / (2 * step));
    }
}
