using System.Runtime.CompilerServices;
using System.Threading.Channels;

namespace Lighting.Calc.Cli.Commands;

/// <summary>Works on items on several threads and hands the results out in the order of the items.</summary>
/// <remarks>Never more than a few items a thread are taken ahead of the reader, so that memory does not grow with their
/// number.</remarks>
internal static class OrderedWork
{
    private const int AheadPerThread = 32;

    /// <param name="items">The items, enumerated as they are needed, on one thread at a time.</param>
    /// <param name="work">Called on several threads at once.</param>
    /// <param name="threads">How many, 1 or more.</param>
    /// <param name="cancel">Stops between two items.</param>
    public static async IAsyncEnumerable<TResult> Of<TItem, TResult>(
        IEnumerable<TItem> items,
        Func<TItem, TResult> work,
        int threads,
        [EnumeratorCancellation] CancellationToken cancel
    )
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        CancellationToken stopped = stop.Token;
        var results = Channel.CreateBounded<Task<TResult>>(threads * AheadPerThread);
        var waiting = Channel.CreateBounded<(TItem Item, TaskCompletionSource<TResult> Result)>(
            threads * AheadPerThread
        );
        Task[] tasks = [Task.Run(Feed, stopped), .. Enumerable.Range(0, threads).Select(_ => Task.Run(Work, stopped))];
        try
        {
            await foreach (Task<TResult> result in results.Reader.ReadAllAsync(stopped))
                yield return await result.WaitAsync(stopped);
        }
        finally
        {
            await stop.CancelAsync();
            await Task.WhenAll(tasks).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }

        async Task Feed()
        {
            Exception? fault = null;
            try
            {
                foreach (TItem item in items)
                {
                    var result = new TaskCompletionSource<TResult>(TaskCreationOptions.RunContinuationsAsynchronously);
                    await results.Writer.WriteAsync(result.Task, stopped);
                    await waiting.Writer.WriteAsync((item, result), stopped);
                }
            }
#pragma warning disable CA1031 // Handed to the reader, who throws it.
            catch (Exception problem)
#pragma warning restore CA1031
            {
                fault = problem;
            }

            results.Writer.Complete(fault);
            waiting.Writer.Complete();
        }

        async Task Work()
        {
            await foreach ((TItem item, TaskCompletionSource<TResult> result) in waiting.Reader.ReadAllAsync(stopped))
            {
                try
                {
                    result.SetResult(work(item));
                }
#pragma warning disable CA1031 // Handed to the reader, who throws it.
                catch (Exception problem)
#pragma warning restore CA1031
                {
                    result.SetException(problem);
                }
            }
        }
    }
}
