using System.CommandLine;
using Lighting.Calc.Cli.Rendering;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>check</c> on many bikes: a row each, on all cores, in the order given.</summary>
internal sealed class FleetCheck
{
    private readonly BikeOptions _options;
    private readonly FleetOptions _fleet;
    private readonly ParseResult _parsed;
    private readonly CommandConsole _console;
    private readonly FleetClock _clock = new();
    private readonly FleetCounts _counts = new();
    private readonly CatalogueCheck _catalogue = new();

    public FleetCheck(BikeOptions options, FleetOptions fleet, ParseResult parsed, CommandConsole console)
    {
        _options = options;
        _fleet = fleet;
        _parsed = parsed;
        _console = console;
    }

    /// <exception cref="InputException">An option is wrong, or the output cannot be written.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped; the rows written so far are
    /// whole.</exception>
    public async Task<int> RunAsync(IReadOnlyList<string> paths, CancellationToken cancel)
    {
        // Two a core: while one waits for the disk the other works. Lists that the system still has in memory gain
        // nothing by it and lose nothing.
        int threads = 2 * Environment.ProcessorCount,
            most = _fleet.Most(_parsed);
        IEnumerable<FleetFolder> folders = _fleet.Shard(_parsed).Of(FleetFolders.Of(paths));
        _options.CheckAlone(_parsed);
        string format = _options.Output.Format(_parsed);
        bool hasCause = format is not ("csv" or "json");
        IAsyncEnumerable<FleetRow?> rows = OrderedWork.Of(
            folders,
            folder => RowOf(folder, hasCause, cancel),
            threads,
            cancel
        );
        switch (format)
        {
            case "csv":
                await StreamAsync(rows, FleetLines.Csv);
                break;
            case "json":
                await StreamAsync(rows, FleetLines.Json);
                break;
            default:
                var worst = new WorstRows(most);
                var failed = new List<FleetRow>();
                await foreach (FleetRow? row in rows)
                {
                    if (Count(row) is not { } counted)
                        continue;
                    if (counted.IsChecked)
                        worst.Add(counted);
                    else if (failed.Count < most)
                        failed.Add(counted);
                }

                _clock.Writing(() =>
                    _options.Output.Write(_parsed, _console, FleetDocument.Of(worst.InOrder(), failed, _counts))
                );
                break;
        }

        if (_fleet.Timing(_parsed))
            _console.Errors.WriteLine($"lighting-calc: {_clock.Report(_counts.Bikes, threads)}");
        return _counts.ExitStatus;
    }

    private async Task StreamAsync(IAsyncEnumerable<FleetRow?> rows, Func<TextWriter, FleetLines> form)
    {
        using RowOutput output = _options.Output.OpenRows(_parsed, _console);
        using FleetLines lines = form(output.Rows);
        await foreach (FleetRow? row in rows)
        {
            if (Count(row) is not { } counted)
                continue;
            _clock.Writing(() =>
            {
                lines.Write(counted);
                output.EndRow();
            });
        }

        _clock.Writing(output.Complete);
    }

    private FleetRow? Count(FleetRow? row)
    {
        if (row is null)
            return null;
        _counts.Add(row);
        if (!row.IsChecked)
            foreach (string message in row.Messages)
                _console.Errors.WriteLine($"lighting-calc: {row.Folder}: {message}");
        return row;
    }

    private FleetRow? RowOf(FleetFolder folder, bool hasCause, CancellationToken cancel)
    {
        try
        {
            ListResult<BikeLists> lists = _clock.Reading(() => BikeLists.Read(folder.Path));
            if (!lists.Succeeded && !FleetFolders.IsMeantAsBike(folder))
                return null;
            return _clock.Checking(() =>
            {
                BikeInput input = _options.Apply(_parsed, lists);
                return FleetRow.Of(
                    folder.Path,
                    _catalogue.Evaluate(input.Bike, input.Check, cancel),
                    lists.Cautions.Length,
                    hasCause
                );
            });
        }
        catch (InputException wrong)
        {
            return FleetRow.NotChecked(folder.Path, FleetOutcome.WrongInput, [.. wrong.Messages]);
        }
        catch (Exception wrong)
            when (wrong is ArgumentException or NetworkNotSolvedException or IOException or UnauthorizedAccessException)
        {
            return FleetRow.NotChecked(folder.Path, FleetOutcome.WrongInput, [wrong.Message]);
        }
#pragma warning disable CA1031 // One bike must not take the others with it; the exit status tells.
        catch (Exception fault) when (fault is not OperationCanceledException)
#pragma warning restore CA1031
        {
            return FleetRow.NotChecked(
                folder.Path,
                FleetOutcome.ProgramFault,
                [$"a fault of the program's own: {fault.Message}"]
            );
        }
    }
}
