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
        Option<string[]> reading = new("--reading")
        {
            Description =
                "A reading, such as \"ignition=on; lights=main: tail feed 11.9 V\" or \"rear earth 0.3 ohm\"; may be "
                + "repeated.",
            HelpName = "TEXT",
        };
        Option<string?> ask = new("--ask")
        {
            Description =
                "Asks for one test at a time and keeps the answers in this readings.csv, with which it can be carried "
                + "on.",
            HelpName = "FILE",
        };
        command.Add(file);
        command.Add(symptom);
        command.Add(reading);
        command.Add(ask);
        ask.Validators.Add(OptionText.RefuseEmptyPath);
        file.Validators.Add(OptionText.RefuseEmptyPath);
        priors.Validators.Add(OptionText.RefuseEmptyPath);
        command.Add(priors);
        command.SetAction(
            (parsed, cancel) =>
            {
                (BikeInput input, FaultFindingOptions finding) = options.Read(parsed, console);
                if (parsed.GetValue(priors) is { } list)
                    finding = finding with { Priors = PriorsOf(list) };
                string? asked = parsed.GetValue(ask);
                if (asked is not null && parsed.GetValue(file) is not null)
                    throw new InputException("--ask keeps its own list of readings; give no other.");
                List<Reading> readings = asked is null
                    ? [.. ReadingsOf(parsed.GetValue(file), input.Lists)]
                    : [.. File.Exists(asked) ? ReadingsOf(asked, input.Lists) : []];
                Reading[] said = [.. Said(input.Bike, parsed.GetValue(symptom) ?? [], parsed.GetValue(reading) ?? [])];
                readings.AddRange(asked is null ? said : said.Where(r => !readings.Contains(r)));
                if (readings.Any(r => StatesRunningEngine(r, input.Bike) || r.IsOnGenerator))
                    finding = finding with { ConsidersCharging = true };
                var finder = ProbeOptions.WithEngine(
                    input.Bike,
                    finding,
                    () => new FaultFinder(input.Bike, finding, cancel)
                );
                if (asked is not null)
                    return Task.FromResult(StatusOf(new AskLoop(finder, console, asked, readings).Run(cancel)));
                Diagnosis diagnosis = finder.Diagnose(readings, cancel);
                if (diagnosis.Findings.Where(f => f.Severity == Severity.Fault).ToArray() is { Length: > 0 } bad)
                    throw new InputException([.. bad.Select(f => $"{f.Subject}: {f.Message}")]);
                options.Output.Write(parsed, console, FaultsDocument.Of(finder, diagnosis));
                return Task.FromResult(StatusOf(diagnosis));
            }
        );
        return command.WithExample(
            "lighting-calc faults shared/bikes/valley-twin",
            "lighting-calc faults shared/bikes/valley-twin --symptom \"tail lamp dark, headlamp low good\"",
            "lighting-calc faults shared/bikes/valley-twin --reading \"ignition=on; brake=on: stop feed 9.4 V\"",
            "lighting-calc faults shared/bikes/valley-twin --reading \"engine=3000; ignition=on: battery + 12.3 V\""
        );
    }

    private static bool StatesRunningEngine(Reading reading, Bike bike) =>
        EngineTerm.Find(reading.When, bike.Switches.Select(s => s.Switch)) is { } term
        && EngineTerm.Of(term) is { IsRunning: true };

    private static int StatusOf(Diagnosis diagnosis) =>
        diagnosis.NothingFound || diagnosis.Used.IsEmpty ? ExitCode.Suits : ExitCode.DoesNotSuit;

    private static IEnumerable<Reading> Said(Bike bike, string[] symptoms, string[] readings)
    {
        SymptomText[] seen = [.. symptoms.Select(s => SymptomText.Read(bike, s))];
        ReadingText[] read = [.. readings.Select(r => ReadingText.Read(bike, r))];
        string[] wrong =
        [
            .. seen.SelectMany(s => s.Findings).Select(f => $"--symptom: {f.Message}"),
            .. read.SelectMany(r => r.Findings).Select(f => $"--reading: {f.Message}"),
        ];
        return wrong.Length > 0
            ? throw new InputException(wrong)
            : seen.SelectMany(s => s.Readings).Concat(read.SelectMany(r => r.Readings));
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
