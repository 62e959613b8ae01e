using System.CommandLine;
using UnitsNet;

namespace Lighting.Calc.Cli.Commands;

/// <summary>The argument and options that every command on a bike has, and how they change what its lists
/// say.</summary>
internal sealed class BikeOptions
{
    private const string StandardInput = "-";

    private readonly Argument<string?> _bike;
    private readonly Option<string?> _fuse = new("--fuse")
    {
        Description = "Rating of the one fuse, or NAME=RATING of one of several, such as 15A.",
        HelpName = "RATING",
    };
    private readonly Option<string?> _when = new("--when")
    {
        Description = "Only the settings that meet this condition, such as \"lights=low; brake=on\".",
        HelpName = "CONDITION",
    };
    private readonly Option<string?> _volts;
    private readonly Option<string> _engine;

    private readonly Argument<string[]> _more = new("MORE")
    {
        Description = "More bikes; a folder without a lamps.csv with bikes in its sub-folders means all of them.",
        Arity = ArgumentArity.ZeroOrMore,
    };

    private readonly Argument<string?> _other = new("OTHER")
    {
        Description = "The bike to compare it with.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private readonly bool _comparesTwo;

    public BikeOptions(
        Command command,
        bool bikeIsOptional = false,
        bool isDrawing = false,
        bool manyBikes = false,
        bool engineOff = false,
        bool comparesTwo = false
    )
    {
        _comparesTwo = comparesTwo;
        _volts = new("--volts")
        {
            Description = engineOff
                ? "Supply voltage; default: the battery voltage, engine off."
                : "Supply voltage: at the battery's terminals; with --engine off, before its resistance.",
            HelpName = "VOLTS",
        };
        _engine = new("--engine")
        {
            Description = engineOff
                ? "off (default): the battery alone; running: what generator, regulator and battery hold."
                : "running (default): what generator, regulator and battery hold; off: the battery alone.",
            DefaultValueFactory = _ => engineOff ? "off" : "running",
            HelpName = "off|running",
        };
        _bike = new("BIKE")
        {
            Description =
                "A folder of lists, a lamps.csv, all lists as .json or .zip; - reads one of these from standard input.",
            Arity = bikeIsOptional ? ArgumentArity.ZeroOrOne : ArgumentArity.ExactlyOne,
        };
        _engine.AcceptOnlyFromAmong("off", "running");
        _bike.Validators.Add(OptionText.RefuseEmptyPath);
        _more.Validators.Add(OptionText.RefuseEmptyPath);
        _other.Validators.Add(OptionText.RefuseEmptyPath);
        command.Add(_bike);
        if (manyBikes)
            command.Add(_more);
        if (comparesTwo)
            command.Add(_other);
        else
            command.Add(_fuse);
        command.Add(_when);
        command.Add(_volts);
        command.Add(_engine);
        Output = new OutputOptions(command, isDrawing);
    }

    public OutputOptions Output { get; }

    /// <summary>Whether a bike was given.</summary>
    public bool HasBike(ParseResult parsed) => parsed.GetValue(_bike) is not null;

    /// <summary>Whether the supply was given, by its voltage or by whether the engine runs.</summary>
    public bool HasSupply(ParseResult parsed) =>
        parsed.GetValue(_volts) is not null || parsed.GetResult(_engine) is { Implicit: false };

    /// <summary>Text of the supply voltage, for a run without a bike.</summary>
    public string? VoltsText(ParseResult parsed) => parsed.GetValue(_volts);

    /// <summary>Text of the fuse's rating, for a run without a bike.</summary>
    public string? FuseText(ParseResult parsed) => parsed.GetValue(_fuse);

    /// <summary>Every path given, of a command that takes many bikes.</summary>
    public IReadOnlyList<string> Paths(ParseResult parsed) =>
        [parsed.GetRequiredValue(_bike)!, .. parsed.GetRequiredValue(_more)];

    /// <summary>Reads the bike and what the options say of it.</summary>
    /// <param name="parsed">The words.</param>
    /// <param name="console">Where cautions go.</param>
    /// <param name="wiresMayBeOpen">Whether blank cells of wires are accepted, to be chosen.</param>
    /// <exception cref="InputException">A list or an option is wrong.</exception>
    public BikeInput Read(ParseResult parsed, CommandConsole console, bool wiresMayBeOpen = false)
    {
        string path = parsed.GetRequiredValue(_bike)!;
        return Read(parsed, console, ReadLists(path, console, wiresMayBeOpen));
    }

    /// <summary>Reads one bike or two, with their paths.</summary>
    /// <exception cref="InputException">A list or an option is wrong.</exception>
    public (BikeInput Bike, BikeInput? Other, string[] Paths) ReadTwo(ParseResult parsed, CommandConsole console)
    {
        string path = parsed.GetRequiredValue(_bike)!;
        BikeInput bike = Read(parsed, console, ReadLists(path, console));
        return parsed.GetValue(_other) is { } other
            ? (bike, Read(parsed, console, ReadLists(other, console)), [path, other])
            : (bike, null, [path]);
    }

    private BikeInput Read(ParseResult parsed, CommandConsole console, ListResult<BikeLists> lists)
    {
        foreach (ListFault caution in lists.Cautions)
            console.Errors.WriteLine($"lighting-calc: caution: {caution.Message}");
        return Apply(parsed, lists);
    }

    // "-" is standard input: JSON, a zip of lists or a lamps.csv, told apart by how it begins.
    private static ListResult<BikeLists> ReadLists(string bike, CommandConsole console, bool wiresMayBeOpen = false)
    {
        if (bike != StandardInput)
            return wiresMayBeOpen ? BikeLists.ReadWithOpenWires(bike) : BikeLists.Read(bike);
        using Stream input = console.Input();
        ListSource source = ListSource.FromStreamAsync(input).GetAwaiter().GetResult();
        return wiresMayBeOpen ? BikeLists.ReadWithOpenWires(source) : BikeLists.Read(source);
    }

    /// <summary>What the options say of a bike that was read. Safe on several threads at once.</summary>
    /// <exception cref="InputException">A list or an option is wrong.</exception>
    public BikeInput Apply(ParseResult parsed, ListResult<BikeLists> lists)
    {
        if (!lists.TryGetValue(out BikeLists? read))
            throw new InputException(lists.Faults);
        var wrong = new List<string>();
        Bike bike = read.Bike;
        Condition when = Condition.Always;
        if (parsed.GetValue(_when) is { } condition && !Condition.TryParse(condition, out when, out string? expected))
            wrong.Add($"--when '{condition}' is not a condition: expected {expected}.");
        EngineState engine = parsed.GetValue(_engine) == "off" ? EngineState.Off : EngineState.Running;
        ElectricPotential? supply = OptionText.Quantity(parsed, _volts, QuantityText.Voltage, v => v.Volts > 0, wrong);
        if (!_comparesTwo && parsed.GetValue(_fuse) is { } fuse)
            bike = WithFuse(bike, fuse, wrong);
        if (wrong.Count == 0)
            CheckSettings(bike, when, wrong);
        return wrong.Count == 0
            ? new BikeInput(read with { Bike = bike }, when, engine, supply)
            : throw new InputException(wrong);
    }

    /// <summary>Checks what can be checked of the options without a bike, so that many bikes do not each say
    /// it.</summary>
    /// <exception cref="InputException">An option is wrong.</exception>
    public void CheckAlone(ParseResult parsed)
    {
        var wrong = new List<string>();
        if (parsed.GetValue(_when) is { } condition && !Condition.TryParse(condition, out _, out string? expected))
            wrong.Add($"--when '{condition}' is not a condition: expected {expected}.");
        OptionText.Quantity(parsed, _volts, QuantityText.Voltage, v => v.Volts > 0, wrong);
        if (parsed.GetValue(_fuse) is { } fuse)
            OptionText.Quantity(
                QuantityText.Current,
                "--fuse",
                fuse[(fuse.IndexOf('=', StringComparison.Ordinal) + 1)..],
                a => a.Amperes > 0,
                wrong
            );
        if (wrong.Count > 0)
            throw new InputException(wrong);
    }

    private static void CheckSettings(Bike bike, Condition when, List<string> wrong)
    {
        if (when.Terms.IsEmpty && SettingEnumeration.Count(bike, when) <= SettingEnumeration.MostSettings)
            return;
        try
        {
            SettingEnumeration.Of(bike, when);
        }
        catch (ArgumentException problem)
        {
            wrong.Add($"--when: {PlainMessage.Of(problem)}");
        }
    }

    internal static Bike WithFuse(Bike bike, string text, List<string> wrong)
    {
        int equals = text.IndexOf('=', StringComparison.Ordinal);
        string? name = equals < 0 ? null : text[..equals].Trim();
        if (
            OptionText.Quantity(QuantityText.Current, "--fuse", text[(equals + 1)..], a => a.Amperes > 0, wrong)
            is not { } rating
        )
            return bike;
        if (name is null && bike.Fuses.Length == 1)
            return bike with { Fuses = [bike.Fuses[0] with { Rating = rating }] };
        if (bike.Fuses.IsEmpty && !bike.HasNetwork)
            return bike with { Fuses = [new Fuse { Name = name ?? "main", Rating = rating }] };
        int index = Enumerable
            .Range(0, bike.Fuses.Length)
            .FirstOrDefault(i => string.Equals(bike.Fuses[i].Name, name, StringComparison.OrdinalIgnoreCase), -1);
        if (index >= 0)
            return bike with { Fuses = bike.Fuses.SetItem(index, bike.Fuses[index] with { Rating = rating }) };
        wrong.Add(
            bike.Fuses.IsEmpty
                ? $"--fuse '{text}': the bike has runs but no fuse; list it in fuses.csv with the points it is "
                    + $"connected to."
                : $"--fuse '{text}': "
                    + $"{(name is null ? "say which with NAME=RATING" : $"there is no fuse '{name}'")}; the fuses are "
                    + $"{string.Join(", ", bike.Fuses.Select(f => f.Name))}."
        );
        return bike;
    }
}
