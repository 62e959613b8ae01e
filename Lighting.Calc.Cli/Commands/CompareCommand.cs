using System.Collections.Immutable;
using System.CommandLine;
using Lighting.Calc.Cli.Rendering;
using UnitsNet;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>compare</c>: two bikes, or a bike and a change of it, side by side.</summary>
internal static class CompareCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command(
            "compare",
            "Two bikes, or a bike before and after a change given here, side by side: fuses, lamps, charging, findings."
        );
        var options = new BikeOptions(command, comparesTwo: true);
        Option<string[]> lamps = new("--lamp")
        {
            Description = "Another lamp: NAME=WATTS, NAME=AMPS or NAME=CODE, such as \"headlamp high=60 W\".",
            HelpName = "NAME=LAMP",
        };
        Option<string[]> wires = new("--wire")
        {
            Description = "Another wire of a run, such as \"main feed=4 mm2\".",
            HelpName = "RUN=SIZE",
        };
        Option<string[]> fuses = new("--fuse")
        {
            Description = "Rating of the one fuse, or NAME=RATING of one of several, such as 10A.",
            HelpName = "RATING",
        };
        command.Add(lamps);
        command.Add(wires);
        command.Add(fuses);
        command.SetAction(
            (parsed, cancel) =>
            {
                (BikeInput before, BikeInput? other, string[] paths) = options.ReadTwo(parsed, console);
                string[] changes =
                [
                    .. parsed.GetValue(lamps) ?? [],
                    .. parsed.GetValue(wires) ?? [],
                    .. parsed.GetValue(fuses) ?? [],
                ];
                if (other is null == (changes.Length == 0))
                    throw new InputException(
                        other is null
                            ? "give a second bike, or a change with --lamp, --wire or --fuse."
                            : "give a second bike, or a change with --lamp, --wire or --fuse, not both."
                    );
                var wrong = new List<string>();
                Bike after = other?.Bike ?? before.Bike;
                foreach (string text in parsed.GetValue(lamps) ?? [])
                    after = WithLamp(after, text, wrong);
                foreach (string text in parsed.GetValue(wires) ?? [])
                    after = WithWire(after, text, wrong);
                foreach (string text in parsed.GetValue(fuses) ?? [])
                    after = BikeOptions.WithFuse(after, text, wrong);
                if (wrong.Count > 0)
                    throw new InputException(wrong);
                CheckOptions check = before.Check;
                BikeComparison comparison = BikeComparison.Of(
                    BikeCheck.Evaluate(before.Bike, check, cancel),
                    BikeCheck.Evaluate(after, check, cancel)
                );
                options.Output.Write(
                    parsed,
                    console,
                    CompareDocument.Of(
                        comparison,
                        NameOf(before.Bike, paths[0]),
                        other is null ? string.Join(", ", changes) : NameOf(after, paths[1])
                    )
                );
                return Task.FromResult(
                    comparison.After.Verdict == BikeVerdict.Suits ? ExitCode.Suits : ExitCode.DoesNotSuit
                );
            }
        );
        return command.WithExample(
            "lighting-calc compare shared/bikes/valley-twin shared/bikes/chapel-single",
            "lighting-calc compare shared/bikes/valley-twin --lamp \"headlamp high=60 W\" --wire \"main feed=2.5 mm2\""
        );
    }

    private static string NameOf(Bike bike, string path) =>
        bike.Name.Length > 0 ? bike.Name : Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(path)));

    private static Bike WithLamp(Bike bike, string text, List<string> wrong)
    {
        (int index, string value) = Part(text, "--lamp", "lamp", bike.Lamps, l => l.Lamp, wrong);
        if (index < 0)
            return bike;
        FittedLamp lamp = bike.Lamps[index];
        if (Specification(bike, lamp.Specification, value) is { } specification)
            return bike with { Lamps = bike.Lamps.SetItem(index, lamp with { Specification = specification }) };
        ImmutableArray<string> nearest = SpellingSuggestions.Of(value, LampTable.All.Select(l => l.Code));
        wrong.Add(
            $"--lamp '{text}': '{value}' is neither watts such as 60 W, nor amps such as 4.5 A, nor the code of a lamp"
                + (nearest.IsEmpty ? "." : $"; did you mean {string.Join(" or ", nearest)}?")
        );
        return bike;
    }

    // Watts and amps are at the voltage of the lamp that was there.
    private static LampSpecification? Specification(Bike bike, LampSpecification fitted, string value)
    {
        if (LampTable.TryFind(value, bike.SystemVoltage, out PublishedLamp? lamp))
            return lamp.Specification;
        if (LedClassTable.TryFind(value, out LampSpecification? led))
            return led;
        if (QuantityText.Power.TryParse(value, out Power watts, out _) && (double)watts.Watts is >= 0.001 and <= 2000)
            return LampSpecification.FromPower(fitted.Type, fitted.ReferenceVoltage, watts, fitted.MinimumVoltage);
        return
            QuantityText.Current.TryParse(value, out ElectricCurrent amps, out _)
            && amps.Amperes is >= 0.0001 and <= 200
            ? LampSpecification.FromCurrent(fitted.Type, fitted.ReferenceVoltage, amps, fitted.MinimumVoltage)
            : null;
    }

    private static Bike WithWire(Bike bike, string text, List<string> wrong)
    {
        (int index, string value) = Part(text, "--wire", "run", bike.Runs, r => r.Name, wrong);
        if (index < 0)
            return bike;
        return OptionText.Wire($"--wire '{text}'", value, wrong) is { } wire
            ? bike with
            {
                Runs = bike.Runs.SetItem(index, bike.Runs[index] with { Wire = wire }),
            }
            : bike;
    }

    // A name may hold an equals sign; a value never does.
    private static (int Index, string Value) Part<T>(
        string text,
        string option,
        string noun,
        ImmutableArray<T> parts,
        Func<T, string> name,
        List<string> wrong
    )
    {
        int equals = text.LastIndexOf('=');
        string own = text[..Math.Max(equals, 0)].Trim();
        int index = Enumerable
            .Range(0, parts.Length)
            .FirstOrDefault(i => string.Equals(name(parts[i]), own, StringComparison.OrdinalIgnoreCase), -1);
        if (equals < 0)
            wrong.Add($"{option} '{text}': expected NAME=VALUE.");
        else if (index < 0)
            wrong.Add(
                $"{option} '{text}': the bike has no {noun} '{own}'; "
                    + $"{(parts.IsEmpty ? $"it lists no {noun}" : $"it has {string.Join(", ", parts.Select(name))}")}."
            );
        return (index, text[(equals + 1)..].Trim());
    }
}
