using System.Runtime.InteropServices;

namespace Lighting.Calc.Cli;

/// <summary>Ends the work when it is asked to: on the first signal within a second, whatever it is doing; on the second
/// at once.</summary>
/// <remarks>The command line library has a handler of its own, which waits inside and would keep the second signal
/// waiting too; it is switched off.</remarks>
internal sealed class Interruption : IDisposable
{
    /// <summary>How long work has to end by itself, so that it removes what it has begun to write.</summary>
    private static readonly TimeSpan s_grace = TimeSpan.FromSeconds(0.8);

    private readonly CancellationTokenSource _stop = new();
    private readonly PosixSignalRegistration _interrupt;
    private readonly PosixSignalRegistration _terminate;
    private int _signals;

    public Interruption()
    {
        // One thread waits out the grace of the first signal while all others may work: the second needs one more.
        ThreadPool.GetMinThreads(out int workers, out int ports);
        ThreadPool.SetMinThreads(Math.Max(workers, Environment.ProcessorCount + 3), ports);
        _interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, signal => Met(signal, 130));
        _terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, signal => Met(signal, 143));
    }

    /// <summary>The exit status of the signal that was met: 128 and its number.</summary>
    public int Status { get; private set; } = 130;

    /// <summary>Stops the work.</summary>
    public CancellationToken Token => _stop.Token;

    public void Dispose()
    {
        _interrupt.Dispose();
        _terminate.Dispose();
        _stop.Dispose();
    }

    private void Met(PosixSignalContext signal, int status)
    {
        signal.Cancel = true;
        if (Interlocked.Increment(ref _signals) == 1)
        {
            Status = status;
            _ = _stop.CancelAsync();
            Thread.Sleep(s_grace);
        }

        Environment.Exit(status);
    }
}
