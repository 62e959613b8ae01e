namespace Lighting.Calc.Cli.Rendering;

/// <summary>What became of one of many bikes.</summary>
internal enum FleetOutcome
{
    Suits,
    DoesNotSuit,
    NotJudged,
    WrongInput,
    ProgramFault,
}
