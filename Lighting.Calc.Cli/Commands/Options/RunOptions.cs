using System.CommandLine;
using UnitsNet;

namespace Lighting.Calc.Cli.Commands;

/// <summary>The options that describe one run where no bike is given.</summary>
internal sealed class RunOptions
{
    private readonly Option<string?> _current = new("--current")
    {
        Description = "Current in the run, such as 8A.",
        HelpName = "AMPS",
    };
    private readonly Option<string?> _length = new("--length")
    {
        Description = "One-way length of the run; the return is added unless --one-way is given.",
        HelpName = "LENGTH",
    };
    private readonly Option<string?> _temperature = new("--temperature")
    {
        Description = "Conductor temperature; default 20 °C.",
        HelpName = "TEMPERATURE",
    };
    private readonly Option<bool> _oneWay = new("--one-way") { Description = "Do not add the return to the length." };

    public RunOptions(Command command)
    {
        command.Add(_current);
        command.Add(_length);
        command.Add(_temperature);
        command.Add(_oneWay);
    }

    /// <summary>Whether any of the options was given.</summary>
    public bool AnyGiven(ParseResult parsed) =>
        parsed.GetValue(_current) is not null
        || parsed.GetValue(_length) is not null
        || parsed.GetValue(_temperature) is not null
        || parsed.GetValue(_oneWay);

    /// <summary>Reads the run, adding to <paramref name="wrong"/> what cannot be read.</summary>
    public SingleRun? Read(ParseResult parsed, string? voltsText, List<string> wrong)
    {
        ElectricCurrent? current = OptionText.Required(
            QuantityText.Current,
            "--current",
            parsed.GetValue(_current),
            a => a.Amperes > 0,
            wrong
        );
        Length? length = OptionText.Required(
            QuantityText.Length,
            "--length",
            parsed.GetValue(_length),
            l => l.Meters > 0,
            wrong
        );
        ElectricPotential? volts = OptionText.Required(
            QuantityText.Voltage,
            "--volts",
            voltsText,
            v => v.Volts > 0,
            wrong
        );
        Temperature? temperature = parsed.GetValue(_temperature) is null
            ? Temperature.FromDegreesCelsius(20)
            : OptionText.Quantity(
                parsed,
                _temperature,
                QuantityText.Temperature,
                t => t.DegreesCelsius is >= -60 and <= 250,
                wrong
            );
        return current is { } a && length is { } l && volts is { } v && temperature is { } c
            ? new SingleRun(a, l, parsed.GetValue(_oneWay) ? l : l * 2, v, c)
            : null;
    }
}
