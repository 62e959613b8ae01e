using System.CommandLine;
using Lighting.Calc.Cli.Rendering;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>load</c>: current and power per lamp, circuit and setting.</summary>
internal static class LoadCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command("load", "Current and power per lamp, circuit and setting.");
        var options = new BikeOptions(command);
        command.SetAction(
            (parsed, cancel) =>
            {
                BikeInput input = options.Read(parsed, console);
                BikeReport report = BikeCheck.Evaluate(input.Bike, input.Check, cancel);
                options.Output.Write(parsed, console, LoadDocument.Of(report));
                return Task.FromResult(ExitCode.Suits);
            }
        );
        return command.WithExample("lighting-calc load shared/bikes/valley-twin --when \"ignition=on; lights=main\"");
    }
}
