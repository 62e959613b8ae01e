using Lighting.Calc.Cli.Rendering;

namespace Lighting.Calc.Cli.Commands;

/// <summary>One test at a time: shows it, takes the answer, and keeps both in a <c>readings.csv</c>, the only
/// state.</summary>
internal sealed class AskLoop(FaultFinder finder, CommandConsole console, string path, List<Reading> readings)
{
    // From this probability on the repair comes before another test.
    private const double Found = 0.9;

    // How many readings each answer gave.
    private readonly Stack<int> _answers = new();

    /// <summary>Asks until a fault is found, no test tells more, or nobody answers.</summary>
    /// <returns>The last diagnosis.</returns>
    /// <exception cref="InputException">A reading is wrong, or the file cannot be written.</exception>
    public Diagnosis Run(CancellationToken cancel)
    {
        Say(string.Join("\n", Cautions.OfWork(finder.Bike).Texts));
        Say("Answer as the meter shows it (12.4, OL) or as it looks (dark, dim, good); skip, undo, ? for why, quit.");
        while (true)
        {
            Diagnosis diagnosis = finder.Diagnose(readings, cancel);
            if (diagnosis.Findings.Where(f => f.Severity == Severity.Fault).ToArray() is { Length: > 0 } bad)
                throw new InputException([.. bad.Select(f => $"{f.Subject}: {f.Message}")]);
            Say("");
            Say(diagnosis.Summary);
            foreach (Finding caution in diagnosis.Findings)
                Say(caution.Message);
            if (diagnosis.Repair is { } repair)
                Say($"Repair: {repair}");
            if (diagnosis.Proof is { } proof)
                Say($"Afterwards: {proof}.");
            bool isFound =
                diagnosis.Ranked[0].Probability >= Found && (diagnosis.Repair is not null || diagnosis.NothingFound);
            if (isFound || diagnosis.Next is not { } next)
            {
                if (!isFound)
                    Say("No test tells more.");
                return diagnosis;
            }

            Say($"Test {Taken() + 1}: {next.Instruction}");
            foreach (string caution in Cautions.OfTest(finder, next).Texts)
                Say($"  {caution}");
            if (!Answered(next))
                return diagnosis;
        }
    }

    // Whether an answer was taken; false at the end of the input.
    private bool Answered(NextTest next)
    {
        while (true)
        {
            console.Output.Write("> ");
            console.Output.Flush();
            if (console.Answers.ReadLine()?.Trim() is not { } said || said is "quit" or "q" or "exit")
                return false;
            switch (said.ToLowerInvariant())
            {
                case "":
                    continue;
                case "?":
                    foreach (TestOutcome outcome in next.Outcomes)
                        Say($"  {outcome.Outcome}: {outcome.Meaning}");
                    continue;
                case "undo" when readings.Count == 0:
                    Say("There is nothing to undo.");
                    continue;
                case "undo":
                    int last = _answers.TryPop(out int count) ? count : 1;
                    readings.RemoveRange(readings.Count - last, last);
                    break;
                case "skip":
                    readings.Add(next.Row with { IsSkipped = true });
                    _answers.Push(1);
                    break;
                case var _ when next.IsEveryLamp:
                    if (RoundOfLamps.Answered(finder.Model, next.Row, said) is not { } round)
                    {
                        Say($"'{said}' is no answer to this test: {Expected(next)}.");
                        continue;
                    }

                    readings.AddRange(round);
                    _answers.Push(round.Count);
                    break;
                default:
                    if (ReadingText.Answered(next.Row, said) is not { } reading)
                    {
                        Say($"'{said}' is no answer to this test: {Expected(next)}.");
                        continue;
                    }

                    if (!IsPossible(reading))
                        continue;
                    readings.Add(reading);
                    _answers.Push(1);
                    break;
            }

            ResultFile.Write(path, BikeListsWriter.Write(readings));
            return true;
        }
    }

    // A round of the lamps is one test.
    private int Taken()
    {
        Reading[] taken = [.. readings.Where(r => !r.IsSkipped)];
        return taken
            .Index()
            .Count(r =>
                r.Index == 0
                || r.Item.Instrument != Instrument.Visual
                || taken[r.Index - 1].Instrument != Instrument.Visual
                || !r.Item.When.Equals(taken[r.Index - 1].When)
            );
    }

    private bool IsPossible(Reading reading)
    {
        foreach (
            Finding wrong in finder
                .Diagnose([reading], seekNext: false)
                .Findings.Where(f => f.Severity == Severity.Fault)
        )
        {
            Say(wrong.Message);
            return false;
        }

        return true;
    }

    private static string Expected(NextTest next) =>
        next.Instrument switch
        {
            _ when next.IsEveryLamp => "good, or the lamps that look wrong, such as tail lamp dark, stop lamp dim",
            Instrument.Meter => "a number of volts",
            Instrument.Ammeter => "a number of amps",
            Instrument.Ohmmeter => "a number of ohms, or OL",
            Instrument.Wiggle => "flickers or steady",
            _ => "dark, dim, good or bright",
        };

    private void Say(string line) => console.Output.WriteLine(line);
}
