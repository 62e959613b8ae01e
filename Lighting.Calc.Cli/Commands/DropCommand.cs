using System.CommandLine;
using Lighting.Calc.Cli.Rendering;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>drop</c>: voltage at each lamp and the voltage-drop breakdown, or the drop of one run.</summary>
internal static class DropCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command(
            "drop",
            "Voltage at each lamp and the voltage-drop breakdown; or the drop of one run from options, with no file."
        );
        var options = new BikeOptions(command, bikeIsOptional: true);
        var run = new RunOptions(command);
        Option<string?> wire = new("--wire")
        {
            Description = "Wire of the run, such as 18AWG, \"18 AWG stranded\" or 1.5mm2.",
            HelpName = "SIZE",
        };
        command.Add(wire);
        Option<string?> relay = new("--relay")
        {
            Description = "Plan a relay near the battery for this lamp, fed through a fuse of its own.",
            HelpName = "LAMP",
        };
        command.Add(relay);
        var folder = new ListsFolder(command, "the bike with the relay");
        command.SetAction(
            (parsed, cancel) =>
            {
                if (parsed.GetValue(relay) is null && folder.IsGiven(parsed))
                    throw new InputException("--lists goes with a relay: give --relay.");
                if (!options.HasBike(parsed) && parsed.GetValue(relay) is not null)
                    throw new InputException("--relay is for a lamp of a bike: name the bike.");
                if (!options.HasBike(parsed))
                    return Task.FromResult(OfOneRun(parsed, console, options, run, parsed.GetValue(wire)));
                if (run.AnyGiven(parsed) || parsed.GetValue(wire) is not null)
                    throw new InputException(
                        "give a bike, or the options of one run (--current, --length, --wire, --volts), not both."
                    );
                BikeInput input = options.Read(parsed, console);
                if (parsed.GetValue(relay) is { } lamp)
                {
                    if (input.Bike.Lamps.All(l => !Name.Equal(l.Lamp, lamp)))
                        throw new InputException(
                            $"--relay: the bike has no lamp '{lamp}'; it has "
                                + $"{string.Join(", ", input.Bike.Lamps.Select(l => l.Lamp))}."
                        );
                    RelayPlan plan = RelayPlanner.Plan(input.Bike, lamp, input.Check, cancel);
                    options.Output.Write(parsed, console, RelayDocument.Of(input.Bike, plan));
                    if (plan.Planned is { } planned)
                        folder.Write(parsed, console, input.Lists with { Bike = planned });
                    return Task.FromResult(plan.IsFeasible ? ExitCode.Suits : ExitCode.DoesNotSuit);
                }

                BikeReport report = BikeCheck.Evaluate(input.Bike, input.Check, cancel);
                options.Output.Write(
                    parsed,
                    console,
                    DropDocument.Of(report, RelayPlanner.ForLargestDrops(report, input.Check, count: 2, cancel))
                );
                // Without runs every drop is zero, and none is judged.
                bool within = report.Bike.HasNetwork && !report.WorstDrops.Any(d =>
                    DropLimit.Of(input.Bike, d.Lamp.Lamp, d.SupplyVoltage) is { IsAdvice: false } limit
                    && limit.IsExceededBy(d.Lamp.Drop!.Value)
                );
                return Task.FromResult(within ? ExitCode.Suits : ExitCode.DoesNotSuit);
            }
        );
        return command.WithExample(
            "lighting-calc drop shared/bikes/valley-twin",
            "lighting-calc drop shared/bikes/valley-twin --relay \"headlamp high\"",
            "lighting-calc drop --current 8A --length 1.8m --wire 18AWG --volts 12V"
        );
    }

    private static int OfOneRun(
        ParseResult parsed,
        CommandConsole console,
        BikeOptions options,
        RunOptions runOptions,
        string? wireText
    )
    {
        var wrong = new List<string>();
        SingleRun? run = runOptions.Read(parsed, options.VoltsText(parsed), wrong);
        WireSize? wire = OptionText.Wire("--wire", wireText, wrong);
        if (run is null || wire is null)
            throw new InputException(wrong);
        options.Output.Write(parsed, console, SingleRunDocument.OfDrop(run, wire));
        return SingleRunDocument.IsRatedFor(wire, run.Current) ? ExitCode.Suits : ExitCode.DoesNotSuit;
    }
}
