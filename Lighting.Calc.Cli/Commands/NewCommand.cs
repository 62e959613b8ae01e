using System.CommandLine;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>new</c>: the lists of an example bike in a folder, to be changed into one's own.</summary>
internal static class NewCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command("new", "Writes the lists of an example bike, to be changed into your own.");
        Argument<string> folder = new("FOLDER") { Description = "A folder, made if need be; it may have no lists." };
        folder.Validators.Add(OptionText.RefuseEmptyPath);
        command.Add(folder);
        var volts = new Choice(command, "--volts", "System voltage", "12", "6");
        var supply = new Choice(command, "--supply", "Supply of the lamps", "battery", "coil");
        var fuses = new Choice(command, "--fuses", "One fuse, or several", "one", "several");
        var indicators = new Choice(command, "--indicators", "Indicators", "no", "yes");
        command.SetAction(
            (parsed, _) =>
            {
                string path = parsed.GetRequiredValue(folder);
                NewFolder.Check(path);
                bool isSixVolts = volts.IsSecond(parsed, console),
                    hasCoil = supply.IsSecond(parsed, console);
                var options = new NewBikeOptions
                {
                    IsSixVolts = isSixVolts,
                    HasLightingCoil = hasCoil,
                    HasSeveralFuses = !hasCoil && fuses.IsSecond(parsed, console),
                    HasIndicators = indicators.IsSecond(parsed, console),
                };
                IReadOnlyDictionary<string, string> lists = NewBike.Lists(options);
                NewFolder.Write(path, lists);
                console.Output.WriteLine(
                    $"Written to '{path}': {string.Join(", ", lists.Keys.Order(StringComparer.Ordinal))}."
                );
                if (hasCoil)
                    console.Output.WriteLine("A lighting coil limits its own current: no fuse is listed.");
                console.Output.WriteLine("The figures are examples: fill in those of your bike, then");
                console.Output.WriteLine($"  lighting-calc check {(path.Contains(' ') ? $"\"{path}\"" : path)}");
                return Task.FromResult(ExitCode.Suits);
            }
        );
        return command.WithExample(
            "lighting-calc new my-bike",
            "lighting-calc new my-bike --volts 6 --supply battery --fuses several --indicators yes"
        );
    }

    /// <summary>One of two words: as the option says, else as a person at a terminal answers, else the first.</summary>
    private sealed class Choice
    {
        private readonly Option<string?> _option;
        private readonly string _question;
        private readonly string _first;
        private readonly string _second;

        public Choice(Command command, string name, string question, string first, string second)
        {
            (_question, _first, _second) = (question, first, second);
            _option = new(name) { Description = $"{question}; default {first}.", HelpName = $"{first}|{second}" };
            _option.AcceptOnlyFromAmong(first, second);
            command.Add(_option);
        }

        public bool IsSecond(ParseResult parsed, CommandConsole console)
        {
            string? answer = parsed.GetValue(_option);
            while (answer is null && console.Asks)
            {
                console.Output.Write($"{_question}, {_first} or {_second}? [{_first}] ");
                console.Output.Flush();
                string? said = console.Answers.ReadLine()?.Trim();
                // The end of what is typed takes what is left as it is.
                answer =
                    string.IsNullOrEmpty(said) ? _first
                    : Array.Find([_first, _second], w => w.StartsWith(said, StringComparison.OrdinalIgnoreCase));
            }

            return answer == _second;
        }
    }
}
