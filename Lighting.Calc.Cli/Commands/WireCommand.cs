using System.CommandLine;
using Lighting.Calc.Cli.Rendering;
using UnitsNet;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>wire</c>: the wire size of every run of a bike together, or of one run from options.</summary>
internal static class WireCommand
{
    // What is against the wires as they are, which the written lists no longer have.
    private static readonly FindingKind[] s_ofFittedWires =
    [
        FindingKind.WiresRatedBelowFuse,
        FindingKind.WiresUnratedBehindFuse,
        FindingKind.RunOverloaded,
        FindingKind.ShortDoesNotClear,
        FindingKind.VoltageDropTooLarge,
    ];

    public static Command Create(CommandConsole console)
    {
        var command = new Command(
            "wire",
            "The wire size for each run, few different sizes chosen together; or of one run from options, with no file."
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
        Option<string?> measured = new("--measured")
        {
            Description = "What one cable is by its strands, counted and one of them measured; any other size too.",
            HelpName = "COUNT/DIAMETER",
        };
        Option<string?> stock = new("--stock")
        {
            Description = "Only these sizes, as they are on the shelf, such as \"1 mm2, 2 mm2, 4 mm2\".",
            HelpName = "SIZES",
        };
        Option<string?> most = new("--sizes")
        {
            Description = "The most different sizes to choose; default 3, or all of --stock.",
            HelpName = "COUNT",
        };
        Option<bool> hot = new("--hot-wires")
        {
            Description = "Wires that state no temperature are taken to warm with the square root of their load, not "
                + "its square: conservative (AC 43.13-1B).",
        };
        command.Add(hot);
        family.AcceptOnlyFromAmong("awg", "stranded", "metric");
        foreach (Option option in new Option[] { family, drop, ambient, bundle, least, measured, stock, most })
            command.Add(option);
        var folder = new ListsFolder(command, "the bike with the sizes filled in");
        command.SetAction(
            (parsed, cancel) =>
            {
                var wrong = new List<string>();
                if (parsed.GetValue(measured) is { } cable)
                {
                    if (options.HasBike(parsed) || run.AnyGiven(parsed))
                        throw new InputException("--measured is of one cable alone: leave out the bike and the run.");
                    if (OptionText.Wire("--measured", cable, wrong) is not { } found)
                        throw new InputException(wrong);
                    options.Output.Write(parsed, console, CableDocument.Of(found));
                    return Task.FromResult(ExitCode.Suits);
                }

                WireConstruction? construction = parsed.GetValue(family) switch
                {
                    "awg" => WireConstruction.SolidGauge,
                    "stranded" => WireConstruction.StrandedGauge,
                    "metric" => WireConstruction.MetricCable,
                    _ => null,
                };
                Ratio? allowed = OptionText.Quantity(
                    parsed,
                    drop,
                    QuantityText.Percent,
                    r => r.Percent is > 0 and < 100,
                    wrong
                );
                Temperature? air = OptionText.Quantity(
                    parsed,
                    ambient,
                    QuantityText.Temperature,
                    t => t.DegreesCelsius is >= -40 and <= 100,
                    wrong
                );
                Area thinnest = parsed.GetValue(least) is { } size
                    ? OptionText.Wire("--minimum", size, wrong)?.CopperArea ?? Area.Zero
                    : new WireSizingOptions().MinimumArea;
                if (!options.HasBike(parsed))
                {
                    int? together = OptionText.Whole("--bundle", parsed.GetValue(bundle), 1, wrong);
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
                                Bundle = together ?? 1,
                                Fuse = fuse,
                                Family = construction ?? WireConstruction.MetricCable,
                                MinimumArea = thinnest,
                            }
                        )
                    );
                }

                int? sizes = OptionText.Whole("--sizes", parsed.GetValue(most), 1, wrong);
                IReadOnlyList<WireSize> shelf = parsed.GetValue(stock) is { } listed
                    ? OptionText.Wires("--stock", listed, wrong)
                    : [];
                if (run.AnyGiven(parsed) || parsed.GetValue(bundle) is not null)
                    throw new InputException(
                        "give a bike, or the options of one run (--current, --length, --volts, --bundle), not both."
                    );
                BikeInput input = options.Read(parsed, console, wiresMayBeOpen: true);
                if (!input.Bike.HasNetwork)
                    throw new InputException(
                        "the bike lists no runs; add runs.csv, or give the options of one run (--current, --length, "
                            + "--volts)."
                    );
                if (wrong.Count > 0)
                    throw new InputException(wrong);
                bool isWritten = folder.IsGiven(parsed);
                WireSizingResult result = HarnessSizing.Size(
                    new HarnessNetwork(input.Bike),
                    new WireSizingOptions
                    {
                        Family = construction,
                        AllowedDrop = allowed,
                        MinimumArea = thinnest,
                        Stock = [.. shelf],
                        MostSizes = sizes,
                        HeatRule = parsed.GetValue(hot) ? ConductorHeatRule.SquareRoot : ConductorHeatRule.Square,
                        Check = input.Check with { Fuses = new FuseOptions { WireAmbient = air } },
                    },
                    cancel
                );
                options.Output.Write(parsed, console, WireDocument.Of(input.Bike, result, input.When));
                if (result.Sized is { } sized)
                    folder.Write(parsed, console, input.Lists with { Bike = sized });
                else if (isWritten)
                    console.Errors.WriteLine("lighting-calc: --lists: no sizes were found, and nothing was written.");
                return Task.FromResult(
                    result is { IsFeasible: true, Unmet.IsEmpty: true }
                    && !result.Findings.Any(f =>
                        f.Severity == Calc.Severity.Fault && !(isWritten && s_ofFittedWires.Contains(f.Kind))
                    )
                        ? ExitCode.Suits
                        : ExitCode.DoesNotSuit
                );
            }
        );
        return command.WithExample(
            "lighting-calc wire shared/bikes/valley-twin",
            "lighting-calc wire shared/bikes/valley-twin --stock \"1 mm2, 2.5 mm2, 4 mm2\"",
            "lighting-calc wire --current 8A --length 1.8m --volts 12V",
            "lighting-calc wire --current 8A --length 6ft --volts 6V --family stranded --fuse 15A",
            "lighting-calc wire --measured 28/0.30"
        );
    }

    private static int OfOneRun(ParseResult parsed, CommandConsole console, BikeOptions options, SingleRunOptions run)
    {
        SingleRunResult result = SingleRunSizing.Size(run);
        options.Output.Write(parsed, console, SingleRunDocument.OfWire(run, result));
        return result.Chosen is null ? ExitCode.DoesNotSuit : ExitCode.Suits;
    }
}
