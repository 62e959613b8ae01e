using System.CommandLine;
using Lighting.Calc.Charging;
using Lighting.Calc.Cli.Rendering;
using Lighting.Calc.Verdicts;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>charging</c>: the balance over engine speed, the ride and standing time.</summary>
internal static class ChargingCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command("charging", "The balance over engine speed, over the ride, and how long the lights stand on the battery.");
        var options = new BikeOptions(command);
        command.SetAction((parsed, cancel) =>
        {
            BikeInput input = options.Read(parsed, console);
            if (input.Bike.Charging.IsEmpty)
                throw new InputException("the bike has no charging curve; add charging.csv with the columns rpm and current.");
            BikeSolution solution = BikeSolution.Of(input.Bike, input.When, input.Supply, cancel);
            ChargingReport report = ChargingReport.Of(solution, ChargingOptions.Default);
            options.Output.Write(parsed, console, () => ChargingDocument.Of(report), json => ChargingJson.Write(json, report));
            return Task.FromResult(report.Suits ? ExitCode.Suits : ExitCode.DoesNotSuit);
        });
        return command.WithExample("lighting-calc charging shared/bikes/valley-twin", "lighting-calc charging shared/bikes/valley-twin --format csv");
    }
}
