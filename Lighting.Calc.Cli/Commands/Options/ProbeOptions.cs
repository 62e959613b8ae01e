using System.CommandLine;
using UnitsNet;

namespace Lighting.Calc.Cli.Commands;

/// <summary>The options of the commands that go with a meter: the bike's, the engine speed, and what
/// they give the fault finding.</summary>
internal sealed class ProbeOptions
{
    private readonly Option<string?> _rpm = new("--rpm")
    {
        Description =
            "Engine speed with --engine running or on direct lighting; default: the slowest of charging.csv with 80 % "
            + "of the largest output, on direct lighting the slowest.",
        HelpName = "RPM",
    };
    private readonly BikeOptions _bike;

    public ProbeOptions(Command command)
    {
        _bike = new BikeOptions(command, engineOff: true);
        command.Add(_rpm);
    }

    public OutputOptions Output => _bike.Output;

    /// <summary>Reads the bike and how it is tested.</summary>
    /// <exception cref="InputException">A list or an option is wrong, or the bike lacks what probing needs.</exception>
    public (BikeInput Input, FaultFindingOptions Options) Read(ParseResult parsed, CommandConsole console)
    {
        BikeInput input = _bike.Read(parsed, console);
        Bike bike = input.Bike;
        if (!bike.HasNetwork)
            throw new InputException(
                "the bike lists no runs; add runs.csv: without wires there is nothing to measure."
            );
        bool direct = bike.Lighting == LightingSupply.Direct;
        var wrong = new List<string>();
        if (direct && bike.Charging.IsEmpty)
            wrong.Add("the lamps are fed by a lighting coil; add charging.csv, with its output.");
        if (direct && _bike.HasSupply(parsed))
            wrong.Add(
                "--volts and --engine go with a battery: the voltage of a lighting coil follows from the engine speed, "
                    + "--rpm."
            );
        RotationalSpeed? speed = OptionText.Quantity(
            parsed,
            _rpm,
            QuantityText.Speed,
            n => n.RevolutionsPerMinute > 0,
            wrong
        );
        if (parsed.GetValue(_rpm) is not null)
        {
            if (!direct && input.Engine == EngineState.Off)
                wrong.Add("--rpm goes with --engine running, or with direct lighting (bike.csv: lighting,direct).");
            else if (!direct && bike.Charging.IsEmpty)
                wrong.Add("--rpm needs charging.csv, with the output over engine speed.");
            else if (!direct && _bike.VoltsText(parsed) is not null)
                wrong.Add("--rpm and --volts exclude each other: one of them says what the voltage is.");
        }

        if (wrong.Count > 0)
            throw new InputException(wrong);
        return (
            input,
            new FaultFindingOptions
            {
                Supply = _bike.VoltsText(parsed) is null ? null : input.Supply,
                Engine = input.Engine,
                EngineSpeed = speed,
                Within = input.When,
            }
        );
    }

    /// <summary>Runs what needs the output at an engine speed, if the bike is tested with the engine
    /// running.</summary>
    /// <exception cref="InputException">The coil cannot be fitted to its list, or the speed is outside the
    /// list.</exception>
    public static T WithEngine<T>(Bike bike, FaultFindingOptions options, Func<T> work)
    {
        try
        {
            return work();
        }
        catch (ArgumentException problem)
            when (bike.Lighting == LightingSupply.Direct
                || options.Engine == EngineState.Running
                || options.ConsidersCharging
            )
        {
            throw new InputException(PlainMessage.Of(problem));
        }
    }
}
