using System.CommandLine;
using Lighting.Calc.Cli.Rendering;
using Lighting.Calc.FaultFinding;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>readings</c>: what a meter, a test lamp and an ammeter should show, as a sheet to fill in.</summary>
internal static class ReadingsCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command("readings", "The expected readings: a sheet to print, or with --format csv a readings.csv to fill in.");
        var options = new BikeOptions(command);
        command.SetAction((parsed, cancel) =>
        {
            BikeInput input = options.Read(parsed, console);
            NeedsRuns.Check(input.Bike);
            ExpectedReadings expected = ExpectedReadings.Of(input.Bike, new FaultFindingOptions { Supply = options.HasVolts(parsed) ? input.Supply : null }, cancel);
            options.Output.Write(parsed, console, () => ReadingsDocument.Of(expected), json => ReadingsJson.Write(json, expected));
            return Task.FromResult(ExitCode.Suits);
        });
        return command.WithExample("lighting-calc readings shared/bikes/valley-twin", "lighting-calc readings shared/bikes/valley-twin --format csv");
    }
}
