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
        if (input.When.Terms.IsEmpty)
        {
            BikeSolution solution = BikeSolution.Solve(input.Bike, input.When, input.Supply, cancel);
            return solution.Points.MaxBy(p => p.TotalCurrent.Amperes)
                ?? throw new InputException("no setting could be solved: " + solution.NotSolved[0].Message);
        }

        HarnessSolver solver = new HarnessNetwork(input.Bike).CreateSolver();
        solver.SetSupply(input.Supply);
        try
        {
            return solver.Solve(SettingEnumeration.Held(input.Bike, input.When));
        }
        catch (NetworkNotSolvedException problem)
        {
            throw new InputException(PlainMessage.Of(problem));
        }
    }
}
