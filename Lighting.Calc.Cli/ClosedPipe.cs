namespace Lighting.Calc.Cli;

/// <summary>Tells a reader that has seen enough, such as <c>head</c>, from output that cannot be written.</summary>
internal static class ClosedPipe
{
    private const int UnixBrokenPipe = 32; // EPIPE
    private const int WindowsBrokenPipe = unchecked((int)0x8007006D),
        WindowsPipeIsClosing = unchecked((int)0x800700E8);

    public static bool Is(Exception problem) =>
        problem is IOException
        && (
            OperatingSystem.IsWindows()
                ? problem.HResult is WindowsBrokenPipe or WindowsPipeIsClosing
                : problem.HResult == UnixBrokenPipe
        );
}
