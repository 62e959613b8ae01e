using System.Diagnostics;
using System.Globalization;

namespace Lighting.Calc.Cli.Commands;

/// <summary>Where the time of many bikes goes. Safe on several threads at once.</summary>
internal sealed class FleetClock
{
    private readonly long _start = Stopwatch.GetTimestamp();
    private long _reading;
    private long _checking;
    private long _writing;

    public T Reading<T>(Func<T> work) => Timed(ref _reading, work);

    public T Checking<T>(Func<T> work) => Timed(ref _checking, work);

    public void Writing(Action work) =>
        Timed(
            ref _writing,
            () =>
            {
                work();
                return 0;
            }
        );

    /// <summary>The time in words: bikes a second, and the shares of the work on all threads together.</summary>
    public string Report(long bikes, int threads)
    {
        double seconds = Stopwatch.GetElapsedTime(_start).TotalSeconds,
            all = Math.Max(1, _reading + _checking + _writing);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{bikes} bikes in {seconds:0.00} s, {bikes / seconds:0} a second on {threads} threads; reading "
                + $"{_reading / all:0 %}, solving and judging {_checking / all:0 %}, writing {_writing / all:0 %} of "
                + $"the "
                + $"work."
        );
    }

    private static T Timed<T>(ref long total, Func<T> work)
    {
        long start = Stopwatch.GetTimestamp();
        try
        {
            return work();
        }
        finally
        {
            Interlocked.Add(ref total, Stopwatch.GetTimestamp() - start);
        }
    }
}
