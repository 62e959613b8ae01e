using System.CommandLine;
using Lighting.Calc.Cli.Rendering;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>readings</c>: what a meter, a test lamp and an ammeter should show, as a sheet to fill in.</summary>
internal static class ReadingsCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command(
            "readings",
            "The expected readings: a sheet to print, or with --format csv a readings.csv to fill in."
        );
        var options = new ProbeOptions(command);
        command.SetAction(
            (parsed, cancel) =>
            {
                (BikeInput input, FaultFindingOptions finding) = options.Read(parsed, console);
                ExpectedReadings expected = ProbeOptions.WithEngine(
                    input.Bike,
                    finding,
                    () => ExpectedReadings.Calculate(input.Bike, finding, cancel)
                );
                options.Output.Write(parsed, console, ReadingsDocument.Of(expected));
                return Task.FromResult(ExitCode.Suits);
            }
        );
        return command.WithExample(
            "lighting-calc readings shared/bikes/valley-twin",
            "lighting-calc readings shared/bikes/valley-twin --engine running --rpm 3000",
            "lighting-calc readings shared/bikes/valley-twin --format csv"
        );
    }
}
