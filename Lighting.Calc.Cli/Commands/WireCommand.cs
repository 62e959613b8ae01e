using System.CommandLine;
using Lighting.Calc.Cli.Rendering;
using UnitsNet;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>wire</c>: the wire size of every run of a bike together, or of one run from options.</summary>
internal static class WireCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command(
            "wire",
            "The wire size for each run, chosen together for little copper; or of one run from options, with no file."
        );
        var options = new BikeOptions(command, bikeIsOptional: true);
        var run = new RunOptions(command);
        Option<string?> family = new("--family")
        {
            Description = "Sizes to choose from; default: those of the bike's runs, or metric.",
            HelpName = "awg|stranded|metric",
        };
        Option<string?> drop = new("--drop")
        {
            Description = "Allowed voltage drop; default: the bike's, or 3 % for one run.",
            HelpName = "PERCENT",
        };
        Option<string?> ambient = new("--ambient")
        {
            Description = "Air temperature at the wires; default: the bike's, or 30 °C.",
            HelpName = "TEMPERATURE",
        };
        Option<string?> bundle = new("--bundle")
        {
            Description = "Number of loaded wires in the bundle of the one run; default 1.",
            HelpName = "COUNT",
        };
        Option<string?> least = new("--minimum")
        {
            Description = "Smallest wire to fit, for mechanical strength, such as 0.75mm2; default 0.5mm2 (20 AWG).",
            HelpName = "SIZE",
        };
        family.AcceptOnlyFromAmong("awg", "stranded", "metric");
        foreach (Option option in new Option[] { family, drop, ambient, bundle, least })
            command.Add(option);
        command.SetAction(
            (parsed, cancel) =>
            {
                var wrong = new List<string>();
                WireConstruction? construction = parsed.GetValue(family) switch
                {
                    "awg" => WireConstruction.SolidGauge,
                    "stranded" => WireConstruction.StrandedGauge,
                    "metric" => WireConstruction.MetricCable,
                    _ => null,
                };
                Ratio? allowed = parsed.GetValue(drop) is { } share
                    ? OptionText.Quantity(QuantityText.Percent, "--drop", share, r => r.Percent is > 0 and < 100, wrong)
                    : null;
                Temperature? air = parsed.GetValue(ambient) is { } degrees
                    ? OptionText.Quantity(
                        QuantityText.Temperature,
                        "--ambient",
                        degrees,
                        t => t.DegreesCelsius is >= -40 and <= 100,
                        wrong
                    )
                    : null;
                Area thinnest = parsed.GetValue(least) is { } size
                    ? OptionText.Wire("--minimum", size, wrong)?.CopperArea ?? Area.Zero
                    : new WireSizingOptions().MinimumArea;
                if (!options.HasBike(parsed))
                {
                    int together = 1;
                    if (
                        parsed.GetValue(bundle) is { } count
                        && !(
                            int.TryParse(
                                count,
                                System.Globalization.NumberStyles.None,
                                System.Globalization.CultureInfo.InvariantCulture,
                                out together
                            )
                            && together >= 1
                        )
                    )
                        wrong.Add($"--bundle: '{count}' is not a whole number from 1.");
                    ElectricCurrent? fuse = options.FuseText(parsed) is { } rating
                        ? OptionText.Quantity(QuantityText.Current, "--fuse", rating, a => a.Amperes > 0, wrong)
                        : null;
                    if (run.Read(parsed, options.VoltsText(parsed), wrong) is not { } single || wrong.Count > 0)
                        throw new InputException(wrong);
                    return Task.FromResult(
                        OfOneRun(
                            parsed,
                            console,
                            options,
                            new SingleRunOptions
                            {
                                Current = single.Current,
                                Length = single.Length,
                                OneWay = single.WireLength.Meters == single.Length.Meters,
                                Voltage = single.Supply,
                                WireTemperature = single.Temperature,
                                AllowedDrop = allowed ?? Ratio.FromPercent(3),
                                Ambient = air ?? Temperature.FromDegreesCelsius(30),
                                Bundle = together,
                                Fuse = fuse,
                                Family = construction ?? WireConstruction.MetricCable,
                                MinimumArea = thinnest,
                            }
                        )
                    );
                }

                if (run.AnyGiven(parsed) || parsed.GetValue(bundle) is not null)
                    throw new InputException(
                        "give a bike, or the options of one run (--current, --length, --volts, --bundle), not both."
                    );
                BikeInput input = options.Read(parsed, console);
                if (!input.Bike.HasNetwork)
                    throw new InputException(
                        "the bike lists no runs; add runs.csv, or give the options of one run (--current, --length, "
                            + "--volts)."
                    );
                if (wrong.Count > 0)
                    throw new InputException(wrong);
                var fuses = new FuseOptions { WireAmbient = air };
                WireSizingResult result = HarnessSizing.Size(
                    new HarnessNetwork(input.Bike),
                    new WireSizingOptions
                    {
                        Family = construction,
                        AllowedDrop = allowed,
                        MinimumArea = thinnest,
                        Engine = input.Engine,
                        Supply = input.Supply,
                        When = input.When,
                        Fuses = fuses,
                    },
                    cancel
                );
                options.Output.Write(parsed, console, WireDocument.Of(input.Bike, result));
                return Task.FromResult(
                    result.IsFeasible && result.Findings.All(f => f.Severity != Calc.Severity.Fault)
                        ? ExitCode.Suits
                        : ExitCode.DoesNotSuit
                );
            }
        );
        return command.WithExample(
            "lighting-calc wire shared/bikes/valley-twin",
            "lighting-calc wire --current 8A --length 1.8m --volts 12V",
            "lighting-calc wire --current 8A --length 6ft --volts 6V --family stranded --fuse 15A"
        );
    }

    private static int OfOneRun(ParseResult parsed, CommandConsole console, BikeOptions options, SingleRunOptions run)
    {
        SingleRunResult result = SingleRunSizing.Size(run);
        options.Output.Write(parsed, console, SingleRunDocument.OfWire(run, result));
        return result.Chosen is null ? ExitCode.DoesNotSuit : ExitCode.Suits;
    }
}
