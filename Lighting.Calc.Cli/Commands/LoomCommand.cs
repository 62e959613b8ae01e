using System.CommandLine;
using Lighting.Calc.Cli.Rendering;
using UnitsNet;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>loom</c>: what to cut, crimp, label and buy.</summary>
internal static class LoomCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command(
            "loom",
            "The cut list: each wire with label, length and ends, totals to buy, copper, terminals, labels to cut out."
        );
        var options = new BikeOptions(command);
        Option<string[]> slack = new("--slack")
        {
            Description = "Slack of each wire, as a share or a length (or both, given twice); default 10 %.",
            HelpName = "PERCENT|LENGTH",
        };
        Option<string?> spare = new("--spare")
        {
            Description = "Spare wire to buy, as a share of all that is cut; default 10 %.",
            HelpName = "PERCENT",
        };
        Option<string?> prices = new("--prices")
        {
            Description = "A list of prices by the metre and each; default: the folder's prices.csv.",
            HelpName = "FILE",
        };
        prices.Validators.Add(OptionText.RefuseEmptyPath);
        command.Add(slack);
        command.Add(spare);
        command.Add(prices);
        command.SetAction(
            (parsed, _) =>
            {
                var wrong = new List<string>();
                CutListOptions cut = WithSlack(parsed.GetValue(slack) ?? [], wrong);
                if (OptionText.Quantity(parsed, spare, QuantityText.Percent, IsShare, wrong) is { } more)
                    cut = cut with { Spare = more };
                if (wrong.Count > 0)
                    throw new InputException(wrong);
                BikeInput input = options.Read(parsed, console);
                if (!input.Bike.HasNetwork)
                    throw new InputException("the bike lists no runs; add runs.csv: there is no wire to cut.");
                cut = cut with { Prices = Listed(input.Lists, parsed.GetValue(prices)).Prices };
                options.Output.Write(parsed, console, LoomDocument.Of(CutList.Of(input.Bike, cut)));
                return Task.FromResult(ExitCode.Suits);
            }
        );
        return command.WithExample(
            "lighting-calc loom shared/bikes/valley-twin",
            "lighting-calc loom shared/bikes/valley-twin --slack 5% --slack 4cm --spare 20%"
        );
    }

    private static bool IsShare(Ratio share) => share.Percent is >= 0 and <= 1000;

    // A unit of length tells which of the two is meant; a bare number is a share.
    private static CutListOptions WithSlack(string[] texts, List<string> wrong)
    {
        var cut = new CutListOptions();
        if (texts.Length > 0)
            cut = cut with { Slack = Ratio.Zero };
        foreach (string text in texts)
            if (QuantityText.Percent.TryParse(text, out Ratio share, out _) && IsShare(share))
                cut = cut with { Slack = share };
            else if (QuantityText.Length.TryParse(text, out Length length, out _) && length.Meters is >= 0 and <= 10)
                cut = cut with { SlackLength = length };
            else
                wrong.Add($"--slack: '{text}' is neither a share such as 10% nor a length such as 5cm.");
        return cut;
    }

    private static BikeLists Listed(BikeLists lists, string? path)
    {
        if (path is null)
            return lists;
        ListResult<BikeLists> read = lists.WithPrices(path);
        return read.TryGetValue(out BikeLists? with) ? with : throw new InputException(read.Faults);
    }
}
