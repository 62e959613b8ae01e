using System.CommandLine;
using System.CommandLine.Invocation;
using System.Runtime.InteropServices;

namespace Lighting.Calc.Cli;

/// <summary>Ends the work when it is asked to: on the first signal within a second, whatever it is doing; on the second
/// at once.</summary>
internal sealed class Interruption : IDisposable
{
    /// <summary>How long work has to end by itself, so that it removes what it has begun to write.</summary>
    public static readonly TimeSpan Grace = TimeSpan.FromSeconds(0.8);

    private readonly PosixSignalRegistration _interrupt;
    private readonly PosixSignalRegistration _terminate;
    private int _signals;

    public Interruption()
    {
        _interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, _ => Met(130));
        _terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, _ => Met(143));
    }

    /// <summary>The exit status of the signal that was met: 128 and its number.</summary>
    public int Status { get; private set; } = 130;

    /// <summary>Lets every command work beside the thread that waits for signals; one that computed on it could not be
    /// stopped.</summary>
    public static void WatchOver(Command command)
    {
        if (command.Action is AsynchronousCommandLineAction action)
            command.Action = new Beside(action);
        foreach (Command subcommand in command.Subcommands)
            WatchOver(subcommand);
    }

    public void Dispose()
    {
        _interrupt.Dispose();
        _terminate.Dispose();
    }

    private void Met(int status)
    {
        Status = status;
        if (Interlocked.Increment(ref _signals) > 1)
            Environment.Exit(status);
    }

    private sealed class Beside(AsynchronousCommandLineAction action) : AsynchronousCommandLineAction
    {
        public override Task<int> InvokeAsync(ParseResult parseResult, CancellationToken cancellationToken = default) =>
            Task.Run(() => action.InvokeAsync(parseResult, cancellationToken), CancellationToken.None);
    }
}
