using System.CommandLine;
using Lighting.Calc.Cli.Rendering;
using Lighting.Calc.Verdicts;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>check</c>: the whole verdict on one page.</summary>
internal static class CheckCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command("check", "The whole verdict on one page: load, fuses, worst drop, charging, warnings; of many bikes, a row each.");
        var options = new BikeOptions(command, manyBikes: true);
        var fleet = new FleetOptions(command);
        command.SetAction((parsed, cancel) =>
        {
            IReadOnlyList<string> paths = options.Paths(parsed);
            if (fleet.AsksForMany(parsed, paths))
                return new FleetCheck(options, fleet, parsed, console).RunAsync(paths, cancel);
            BikeInput input = options.Read(parsed, console);
            BikeReport report = BikeCheck.Of(input.Bike, new CheckOptions { When = input.When, Supply = input.Supply }, cancel);
            options.Output.Write(parsed, console, () => CheckDocument.Of(report), json => ReportJson.Write(json, report));
            return Task.FromResult(report.Suits ? ExitCode.Suits : ExitCode.DoesNotSuit);
        });
        return command.WithExample("lighting-calc check shared/bikes/valley-twin", "lighting-calc check shared/bikes/valley-twin --when \"lights=main; dip=high\" --format json", "lighting-calc check shared/bikes --format csv");
    }
}
