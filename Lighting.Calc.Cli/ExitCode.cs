namespace Lighting.Calc.Cli;

/// <summary>What the exit status says; work that is stopped by a signal ends with 128 and the signal's
/// number.</summary>
internal static class ExitCode
{
    /// <summary>Nothing was found against the bike.</summary>
    public const int Suits = 0;

    /// <summary>The bike was computed and something does not suit.</summary>
    public const int DoesNotSuit = 1;

    /// <summary>The input is wrong.</summary>
    public const int WrongInput = 2;

    /// <summary>A fault of the program's own.</summary>
    public const int ProgramFault = 3;
}
