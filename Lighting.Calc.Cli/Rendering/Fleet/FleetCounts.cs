namespace Lighting.Calc.Cli.Rendering;

/// <summary>How many bikes ended how.</summary>
internal sealed class FleetCounts
{
    private readonly long[] _of = new long[Enum.GetValues<FleetOutcome>().Length];

    public long Bikes => _of.Sum();

    public long Of(FleetOutcome outcome) => _of[(int)outcome];

    public void Add(FleetRow row) => _of[(int)row.Outcome]++;

    /// <summary>The gravest of all bikes.</summary>
    public int ExitStatus =>
        Of(FleetOutcome.ProgramFault) > 0 ? ExitCode.ProgramFault
        : Of(FleetOutcome.WrongInput) > 0 ? ExitCode.WrongInput
        : Of(FleetOutcome.DoesNotSuit) + Of(FleetOutcome.NotJudged) > 0 ? ExitCode.DoesNotSuit
        : ExitCode.Suits;
}
