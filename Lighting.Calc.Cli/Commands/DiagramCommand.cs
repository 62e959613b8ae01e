using System.CommandLine;
using Lighting.Calc.Cli.Rendering;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>diagram</c>: the circuit drawn from the lists, voltage at its points and current in its parts in one
/// setting.</summary>
internal static class DiagramCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command(
            "diagram",
            "The circuit as a drawing, in the setting of --when (its other switches off) or else the heaviest: voltage "
                + "at every point, current in every part."
        );
        var options = new BikeOptions(command, isDrawing: true);
        command.SetAction(
            (parsed, cancel) =>
            {
                BikeInput input = options.Read(parsed, console);
                OperatingPoint point = Solved(input, cancel);
                options.Output.Write(parsed, console, DiagramDocument.Of(input.Bike, point));
                return Task.FromResult(ExitCode.Suits);
            }
        );
        return command.WithExample(
            "lighting-calc diagram shared/bikes/valley-twin --when \"ignition=on; lights=main; dip=low\"",
            "lighting-calc diagram shared/bikes/valley-twin --format html"
        );
    }

    private static OperatingPoint Solved(BikeInput input, CancellationToken cancel)
    {
        BikeSolution solution = BikeSolution.Solve(input.Bike, input.Check, cancel);
        Setting held = SettingEnumeration.Held(input.Bike, input.When);
        OperatingPoint? shown = input.When.Terms.IsEmpty
            ? solution.Points.MaxBy(p => p.TotalCurrent.Amperes)
            : solution.Points.FirstOrDefault(p => p.Setting.Equals(held));
        return shown ?? throw new InputException("no setting could be solved: " + solution.NotSolved[0].Message);
    }
}
