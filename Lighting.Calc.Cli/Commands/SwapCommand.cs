using System.Collections.Immutable;
using System.CommandLine;
using Lighting.Calc.Cli.Rendering;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>swap</c>: the bike before and after its lamps are replaced.</summary>
internal static class SwapCommand
{
    private static readonly Dictionary<string, RegulatorKind> s_regulators = new()
    {
        ["none"] = RegulatorKind.None,
        ["shunt"] = RegulatorKind.Shunt,
        ["series"] = RegulatorKind.Series,
    };

    public static Command Create(CommandConsole console)
    {
        var command = new Command(
            "swap",
            "Before and after of a lamp replacement list: lamps, circuits, fuses, voltage drop, charging, and what "
                + "stops working."
        );
        var options = new BikeOptions(command);
        Option<string?> swaps = new("--swaps")
        {
            Description = "A list of replacements; default: the folder's swaps.csv.",
            HelpName = "FILE",
        };
        Option<bool> allLed = new("--all-led")
        {
            Description =
                "Replace every lamp by the generic LED of its socket class ('tables led-classes' prints them).",
        };
        Option<string?> regulator = new("--regulator")
        {
            Description = "The regulator that keeps surplus current out of a full battery; not stated by default.",
            HelpName = "none|shunt|series",
        };
        swaps.Validators.Add(OptionText.RefuseEmptyPath);
        regulator.AcceptOnlyFromAmong([.. s_regulators.Keys]);
        command.Add(swaps);
        command.Add(allLed);
        command.Add(regulator);
        command.SetAction(
            (parsed, cancel) =>
            {
                BikeInput input = options.Read(parsed, console);
                if (parsed.GetValue(allLed) && parsed.GetValue(swaps) is not null)
                    throw new InputException("give --swaps or --all-led, not both.");
                ImmutableArray<UnclassedLamp> unclassed = [];
                ImmutableArray<LampReplacement> replacements;
                if (parsed.GetValue(allLed))
                {
                    AllLedProposal proposal = Swap.ToLed(input.Bike);
                    (replacements, unclassed) = (proposal.Replacements, proposal.Unclassed);
                }
                else
                {
                    replacements = Listed(input.Lists, parsed.GetValue(swaps), console);
                }

                if (replacements.IsEmpty)
                    throw new InputException([
                        "no lamp is replaced.",
                        .. unclassed.Select(u => $"{u.Lamp.Lamp} stays: {u.Reason}."),
                    ]);
                CheckOptions check = input.Check;
                if (parsed.GetValue(regulator) is { } kind)
                    check = check with { Charging = ChargingOptions.Default with { Regulator = s_regulators[kind] } };
                SwapReport report = Swap.Evaluate(input.Bike, replacements, check, cancel);
                options.Output.Write(parsed, console, SwapDocument.Of(report, unclassed));
                return Task.FromResult(report.Verdict == BikeVerdict.Suits ? ExitCode.Suits : ExitCode.DoesNotSuit);
            }
        );
        return command.WithExample(
            "lighting-calc swap shared/bikes/valley-twin",
            "lighting-calc swap shared/bikes/valley-twin --all-led --regulator none"
        );
    }

    private static ImmutableArray<LampReplacement> Listed(BikeLists lists, string? path, CommandConsole console)
    {
        if (path is null)
            return !lists.Swaps.IsEmpty
                ? lists.Swaps
                : throw new InputException(
                    "the bike has no swap list; add swaps.csv, name one with --swaps, or give --all-led."
                );
        ListResult<BikeLists> read = lists.WithSwaps(path);
        foreach (ListFault caution in read.Cautions)
            console.Errors.WriteLine($"lighting-calc: caution: {caution.Message}");
        return read.TryGetValue(out BikeLists? with) ? with.Swaps : throw new InputException(read.Faults);
    }
}
