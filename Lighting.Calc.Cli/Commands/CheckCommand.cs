using System.CommandLine;
using Lighting.Calc.Cli.Rendering;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>check</c>: the whole verdict on one page.</summary>
internal static class CheckCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command(
            "check",
            "The whole verdict on one page: load, fuses, worst drop, charging, warnings; of many bikes, a row each."
        );
        var options = new BikeOptions(command, manyBikes: true);
        var fleet = new FleetOptions(command);
        Option<bool> tolerance = new("--tolerance")
        {
            Description =
                "Add tolerances: bikes drawn within the spreads of their parts (see 'tables tolerances'), percentiles, "
                + "how often each verdict holds, and which part matters most.",
        };
        Option<int?> samples = new("--samples")
        {
            Description = "How many bikes are drawn; default 10000.",
            HelpName = "N",
        };
        Option<long?> seed = new("--seed")
        {
            Description = "Start of the random draw; the same seed gives the same result everywhere. Default 1.",
            HelpName = "N",
        };
        command.Add(tolerance);
        command.Add(samples);
        command.Add(seed);
        command.SetAction(
            (parsed, cancel) =>
            {
                IReadOnlyList<string> paths = options.Paths(parsed);
                if (fleet.AsksForMany(parsed, paths))
                    return new FleetCheck(options, fleet, parsed, console).RunAsync(paths, cancel);
                BikeInput input = options.Read(parsed, console);
                bool isAsked = parsed.GetValue(tolerance);
                Refuse(input, isAsked, parsed.GetValue(samples), parsed.GetValue(seed));
                BikeReport report = BikeCheck.Evaluate(input.Bike, input.Check, cancel);
                ToleranceReport? spread = isAsked
                    ? Draw(input, parsed.GetValue(samples), parsed.GetValue(seed), console, cancel)
                    : null;
                options.Output.Write(parsed, console, CheckDocument.Of(report, spread, PlanFor(report, input, cancel)));
                return Task.FromResult(report.Verdict == BikeVerdict.Suits ? ExitCode.Suits : ExitCode.DoesNotSuit);
            }
        );
        return command.WithExample(
            "lighting-calc check shared/bulb-list.csv --fuse 15A",
            "lighting-calc check shared/bikes/valley-twin",
            "lighting-calc check shared/bikes/valley-twin --when \"lights=main; dip=high\" --format json",
            "lighting-calc check shared/bikes/valley-twin --tolerance --samples 2000 --seed 14"
        );
    }

    // A box with more ways, where a fuse is overloaded or would ask for a wire above 4 mm².
    private static FusePlan? PlanFor(BikeReport report, BikeInput input, CancellationToken cancel)
    {
        bool helps = report.Fuses.Any(f =>
            f.Verdict == FuseVerdict.Overloaded
            || f.Advice.UpsizedRuns.Any(u => u.Wire is null || u.Wire.CopperArea.SquareMillimeters > 4 + 1e-9)
        );
        if (!helps || report.Findings.Any(f => f.Kind is FindingKind.DeadShort or FindingKind.NoOperatingPoint))
            return null;
        FusePlan plan = FusePlanner.Plan(input.Bike, new FusePlanOptions { Check = input.Check }, cancel);
        return plan.IsFeasible ? plan : null;
    }

    private static void Refuse(BikeInput input, bool isAsked, int? samples, long? seed)
    {
        var wrong = new List<string>();
        if (!isAsked && (samples is not null || seed is not null))
            wrong.Add("--samples and --seed go with --tolerance.");
        if (samples is < ToleranceOptions.FewestSamples or > ToleranceOptions.MostSamples)
            wrong.Add(
                $"--samples: {samples} is out of range, {ToleranceOptions.FewestSamples} to "
                    + $"{ToleranceOptions.MostSamples}."
            );
        if (isAsked && input.Bike.Lighting == LightingSupply.Direct)
            wrong.Add("--tolerance is for lamps on a battery; this bike's lamps are fed by a lighting coil directly.");
        if (wrong.Count > 0)
            throw new InputException(wrong);
    }

    private static ToleranceReport Draw(
        BikeInput input,
        int? samples,
        long? seed,
        CommandConsole console,
        CancellationToken cancel
    )
    {
        var defaults = new ToleranceOptions { Check = input.Check };
        using var progress = new SampleProgress(console);
        return ToleranceCheck.Evaluate(
            input.Bike,
            defaults with
            {
                Samples = samples ?? defaults.Samples,
                Seed = seed ?? defaults.Seed,
            },
            progress,
            cancel
        );
    }
}
