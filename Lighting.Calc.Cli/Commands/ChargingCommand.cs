using System.Collections.Immutable;
using System.CommandLine;
using Lighting.Calc.Cli.Rendering;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>charging</c>: the balance over engine speed, the ride and battery run time.</summary>
internal static class ChargingCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command(
            "charging",
            "The charging balance over engine speed and over the ride, and the run time of the lights on the battery."
        );
        var options = new BikeOptions(command);
        Option<string> model = new("--model")
        {
            Description = "curve (default): through the points; machine, coil: a model fitted to two or more points.",
            DefaultValueFactory = _ => "curve",
            HelpName = "curve|machine|coil",
        };
        Option<string> regulator = new("--regulator")
        {
            Description = "The regulator that keeps surplus current out of a full battery.",
            DefaultValueFactory = _ => "not-stated",
            HelpName = "not-stated|none|shunt|series",
        };
        Option<string?> shunt = new("--shunt-limit")
        {
            Description = "Highest current that the shunt regulator can divert.",
            HelpName = "AMPS",
        };
        Option<string?> field = new("--field")
        {
            Description = "Field current of an excited alternator.",
            HelpName = "AMPS",
        };
        Option<string?> charge = new("--charge")
        {
            Description = "State of charge at the start; default 100 %.",
            HelpName = "PERCENT",
        };
        model.AcceptOnlyFromAmong("curve", "machine", "coil");
        regulator.AcceptOnlyFromAmong("not-stated", "none", "shunt", "series");
        foreach (Option option in new Option[] { model, regulator, shunt, field, charge })
            command.Add(option);
        command.SetAction(
            (parsed, cancel) =>
            {
                var wrong = new List<string>();
                ChargingOptions usual = ChargingOptions.Default,
                    charging = usual with
                    {
                        Model = parsed.GetValue(model) switch
                        {
                            "machine" => ChargingModel.FittedMachine,
                            "coil" => ChargingModel.FittedCoil,
                            _ => ChargingModel.Curve,
                        },
                        Regulator = parsed.GetValue(regulator) switch
                        {
                            "none" => RegulatorKind.None,
                            "shunt" => RegulatorKind.Shunt,
                            "series" => RegulatorKind.Series,
                            _ => RegulatorKind.NotStated,
                        },
                        ShuntLimit = OptionText.Quantity(
                            parsed,
                            shunt,
                            QuantityText.Current,
                            a => a.Amperes >= 0,
                            wrong
                        ),
                        FieldCurrent =
                            OptionText.Quantity(parsed, field, QuantityText.Current, a => a.Amperes >= 0, wrong)
                            ?? usual.FieldCurrent,
                        InitialStateOfCharge =
                            OptionText.Quantity(
                                parsed,
                                charge,
                                QuantityText.Fraction,
                                r => r.DecimalFractions is >= 0 and <= 1,
                                wrong
                            ) ?? usual.InitialStateOfCharge,
                    };
                if (wrong.Count > 0)
                    throw new InputException(wrong);
                BikeInput input = options.Read(parsed, console);
                if (charging.ShuntLimit is not null && charging.RegulatorOf(input.Bike) != RegulatorKind.Shunt)
                    throw new InputException(
                        "--shunt-limit goes with a shunt regulator: --regulator shunt, or regulator,shunt in bike.csv."
                    );
                if (input.Bike.Charging.IsEmpty)
                    throw new InputException(
                        "the bike has no charging curve; add charging.csv with the columns rpm and current."
                    );
                return Task.FromResult(
                    input.Bike.Lighting == LightingSupply.Direct
                        ? Direct(parsed, console, options, input, cancel)
                        : Balance(
                            parsed,
                            console,
                            options,
                            input,
                            ChargingSystem.Of(
                                input.Supply is { } volts ? input.Bike with { ChargingVoltage = volts } : input.Bike,
                                charging
                            ),
                            cancel
                        )
                );
            }
        );
        return command.WithExample(
            "lighting-calc charging shared/bikes/valley-twin",
            "lighting-calc charging shared/bikes/valley-twin --format csv"
        );
    }

    private static int Balance(
        ParseResult parsed,
        CommandConsole console,
        BikeOptions options,
        BikeInput input,
        ChargingSystem system,
        CancellationToken cancel
    )
    {
        ImmutableArray<OperatingPoint> points = BikeSolution
            .Solve(input.Bike, input.Check with { Charging = system.Options }, cancel)
            .Points;
        ChargingReport report = system.Report(
            input.When,
            ParkedLights.Find(input.Bike, points, input.Check.Fuses)
        );
        if (report.Worst is null)
            throw new InputException("no setting could be solved: " + report.Findings[0].Message);
        EngineReport? engine =
            input.Engine == EngineState.Off
                ? null
                : EngineReport.Of(system.Bike, points, system.Options, input.Check.Fuses);
        options.Output.Write(parsed, console, ChargingDocument.Of(system, report, engine));
        IEnumerable<Finding> findings = report.Findings.Concat(engine?.Findings ?? []);
        return findings.All(f => f.Severity != Severity.Fault) ? ExitCode.Suits : ExitCode.DoesNotSuit;
    }

    private static int Direct(
        ParseResult parsed,
        CommandConsole console,
        BikeOptions options,
        BikeInput input,
        CancellationToken cancel
    )
    {
        DirectLightingReport report = BikeCheck.DirectLightingOf(
            input.Bike,
            BikeSolution.Solve(input.Bike, input.Check, cancel).Points,
            input.Check.Fuses
        );
        options.Output.Write(parsed, console, DirectLightingDocument.Of(input.Bike, report));
        return report.Findings.All(f => f.Severity != Severity.Fault) ? ExitCode.Suits : ExitCode.DoesNotSuit;
    }
}
