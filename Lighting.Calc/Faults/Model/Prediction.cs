namespace Lighting.Calc;

/// <summary>What one reading would be under one fault.</summary>
/// <param name="Value">Voltage, current, logarithm of resistance, or the logarithm of light.</param>
/// <param name="Sigma">Standard deviation by the harness's tolerance.</param>
/// <param name="Battery">Change per unit change of the battery voltage.</param>
/// <param name="First">Change by the first draw of the tolerances, common to all readings.</param>
/// <param name="Second">The same of the second draw.</param>
/// <param name="Third">The same of the third draw.</param>
/// <param name="Own">Standard deviation of what this reading has for itself: what is unknown between severities that
/// were solved, and the engine's speed.</param>
internal readonly record struct Prediction(
    double Value,
    double Sigma,
    double Battery,
    double First,
    double Second,
    double Third,
    double Own = 0
);
