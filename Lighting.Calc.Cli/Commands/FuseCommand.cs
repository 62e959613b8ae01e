using System.CommandLine;
using Lighting.Calc.Cli.Rendering;
using UnitsNet;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>fuse</c>: the suitability of every fuse.</summary>
internal static class FuseCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command(
            "fuse",
            "The suitability of every fuse: continuous load, inrush, wires, short circuits, rating to fit."
        );
        var options = new BikeOptions(command);
        Option<string?> limit = new("--limit")
        {
            Description = "Continuous load limit as a share of the rating; default 75 %.",
            HelpName = "PERCENT",
        };
        Option<string?> ambient = new("--ambient")
        {
            Description = "Air temperature at the fuses; default: the bike's, or 25 °C.",
            HelpName = "TEMPERATURE",
        };
        Option<bool> blowing = new("--blowing-current")
        {
            Description = "Glass fuses are marked with their blowing current, twice their continuous rating.",
        };
        command.Add(limit);
        command.Add(ambient);
        command.Add(blowing);
        Option<string?> ways = new("--ways")
        {
            Description = "Plan a fuse box with at most this many ways; needed: until every wire is large enough.",
            HelpName = "COUNT|needed",
        };
        Option<bool> apart = new("--apart") { Description = "In the plan: dipped and main beam on ways of their own." };
        command.Add(ways);
        command.Add(apart);
        var folder = new ListsFolder(command, "the bike with the planned fuse box");
        command.SetAction(
            (parsed, cancel) =>
            {
                var wrong = new List<string>();
                var fuses = new FuseOptions { GlassMarkedWithBlowingCurrent = parsed.GetValue(blowing) };
                if (
                    OptionText.Quantity(parsed, limit, QuantityText.Fraction, r => r.Percent is > 0 and <= 100, wrong)
                    is { } ratio
                )
                    fuses = fuses with { ContinuousLoadFactor = ratio };
                if (
                    OptionText.Quantity(
                        parsed,
                        ambient,
                        QuantityText.Temperature,
                        t => t.DegreesCelsius is >= -40 and <= 85,
                        wrong
                    )
                    is { } temperature
                )
                    fuses = fuses with
                    {
                        Ambient = temperature,
                        WireAmbient = Temperature.FromDegreesCelsius(Math.Max(30, temperature.DegreesCelsius)),
                    };
                if (wrong.Count > 0)
                    throw new InputException(wrong);
                if (parsed.GetValue(ways) is { } count)
                {
                    int? most = count == "needed" ? null : OptionText.Whole("--ways", count, 1, wrong);
                    if (wrong.Count > 0)
                        throw new InputException(wrong);
                    bool isWritten = folder.IsGiven(parsed);
                    BikeInput box = options.Read(parsed, console, wiresMayBeOpen: true);
                    if (isWritten && !box.Bike.HasNetwork)
                        throw new InputException(
                            "--lists: the bike lists no runs; add runs.csv, to say what each fuse " + "feeds."
                        );
                    FusePlan plan = FusePlanner.Plan(
                        box.Bike,
                        new FusePlanOptions
                        {
                            Ways = most,
                            ApartDipAndMain = parsed.GetValue(apart),
                            Check = box.Check with { Fuses = fuses },
                        },
                        cancel
                    );
                    options.Output.Write(parsed, console, FusePlanDocument.Of(box.Bike, plan));
                    if (plan.Planned is { } planned)
                        folder.Write(parsed, console, box.Lists with { Bike = planned });
                    return Task.FromResult(FusePlanDocument.HoldsAll(plan) ? ExitCode.Suits : ExitCode.DoesNotSuit);
                }

                if (parsed.GetValue(apart) || folder.IsGiven(parsed))
                    throw new InputException("--apart and --lists go with a fuse plan: give --ways.");
                BikeInput input = options.Read(parsed, console);
                if (input.Bike.Fuses.IsEmpty)
                    throw new InputException("the bike lists no fuse; add fuses.csv, or give --fuse with a rating.");
                BikeReport report = BikeCheck.Evaluate(input.Bike, input.Check with { Fuses = fuses }, cancel);
                Finding[] findings =
                [
                    .. report.Fuses.SelectMany(f => f.Findings),
                    .. UnfusedRuns.Findings(input.Bike, report.Settings.Select(s => s.Setting), cancel),
                ];
                options.Output.Write(parsed, console, FuseDocument.Of(report, findings));
                return Task.FromResult(
                    report.Fuses.All(f => f.Verdict == FuseVerdict.Suits)
                    && findings.All(f => f.Severity != Severity.Fault)
                        ? ExitCode.Suits
                        : ExitCode.DoesNotSuit
                );
            }
        );
        return command.WithExample(
            "lighting-calc fuse shared/bikes/valley-twin",
            "lighting-calc fuse shared/bikes/valley-twin --ways 3",
            "lighting-calc fuse shared/bikes/valley-twin --fuse 20A --ambient 40C"
        );
    }
}
