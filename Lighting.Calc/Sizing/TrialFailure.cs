namespace Lighting.Calc;

/// <summary>A limit that a trial exceeds.</summary>
/// <param name="State">Index of the state.</param>
/// <param name="Lamp">The lamp that loses too much; −1 where it is none.</param>
/// <param name="Run">The run that carries more than its rating; −1 where it is none; neither where no operating point
/// was found.</param>
/// <param name="Excess">Volts missing as a fraction of the source's, or amperes above the rating as a fraction of
/// it.</param>
internal sealed record TrialFailure(int State, int Lamp, int Run, double Excess);
