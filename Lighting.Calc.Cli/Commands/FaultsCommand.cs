using System.Collections.Immutable;
using System.CommandLine;
using Lighting.Calc.Cli.Rendering;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>faults</c>: ranked faults from readings, and the next test.</summary>
internal static class FaultsCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command(
            "faults",
            "The faults that explain the readings, likeliest first, and the most useful next test."
        );
        var options = new ProbeOptions(command);
        Argument<string?> file = new("READINGS")
        {
            Description = "A list of readings; default: the folder's readings.csv.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Option<string[]> symptom = new("--symptom")
        {
            Description =
                "What is seen, such as \"tail lamp dark, headlamp low good\", after a setting and ':' if need be; may "
                + "be repeated.",
            HelpName = "TEXT",
        };
        Option<string?> priors = new("--priors")
        {
            Description = "A list of your own weights: only the rows that differ from 'tables fault-priors'.",
            HelpName = "FILE",
        };
        command.Add(file);
        command.Add(symptom);
        file.Validators.Add(OptionText.RefuseEmptyPath);
        priors.Validators.Add(OptionText.RefuseEmptyPath);
        command.Add(priors);
        command.SetAction(
            (parsed, cancel) =>
            {
                (BikeInput input, FaultFindingOptions finding) = options.Read(parsed, console);
                if (parsed.GetValue(priors) is { } list)
                    finding = finding with { Priors = PriorsOf(list) };
                List<Reading> readings = [.. ReadingsOf(parsed.GetValue(file), input.Lists)];
                SymptomText[] seen =
                [
                    .. (parsed.GetValue(symptom) ?? []).Select(s => SymptomText.Parse(input.Bike, s)),
                ];
                if (seen.SelectMany(s => s.Findings).ToArray() is { Length: > 0 } wrong)
                    throw new InputException([.. wrong.Select(w => $"--symptom: {w.Message}")]);
                readings.AddRange(seen.SelectMany(s => s.Readings));
                var finder = ProbeOptions.WithCoil(input.Bike, () => new FaultFinder(input.Bike, finding, cancel));
                Diagnosis diagnosis = finder.Diagnose(readings, cancel);
                if (diagnosis.Findings.Where(f => f.Severity == Severity.Fault).ToArray() is { Length: > 0 } bad)
                    throw new InputException([.. bad.Select(f => $"{f.Subject}: {f.Message}")]);
                options.Output.Write(parsed, console, FaultsDocument.Of(finder, diagnosis));
                return Task.FromResult(
                    diagnosis.NothingFound || diagnosis.Used.IsEmpty ? ExitCode.Suits : ExitCode.DoesNotSuit
                );
            }
        );
        return command.WithExample(
            "lighting-calc faults shared/bikes/valley-twin",
            "lighting-calc faults shared/bikes/valley-twin --symptom \"tail lamp dark, headlamp low good\""
        );
    }

    private static ImmutableArray<FaultPrior> PriorsOf(string path)
    {
        ListResult<FaultPriorList> read = FaultPriorList.Read(path);
        return read.TryGetValue(out FaultPriorList? list) ? list.Priors : throw new InputException(read.Faults);
    }

    private static IEnumerable<Reading> ReadingsOf(string? path, BikeLists lists)
    {
        if (path is null)
            return lists.Readings;
        ListResult<BikeLists> read = lists.WithReadings(path);
        return read.TryGetValue(out BikeLists? with) ? with.Readings : throw new InputException(read.Faults);
    }
}
