using Lighting.Calc.FaultFinding;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>faults</c> prints: the likeliest faults in sentences, what speaks against them, and the next test.</summary>
internal static class FaultsDocument
{
    private const int Most = 5;

    public static Document Of(FaultFinder finder, Diagnosis diagnosis)
    {
        var blocks = new List<Block>();
        blocks.Add(new Heading("Likeliest first"));
        int rank = 0;
        foreach (FaultGroup group in diagnosis.Ranked.Take(Most))
            blocks.Add(new Paragraph($"{++rank}. {Percent(group.Probability)}  {group.Best.Sentence}{Alike(group)}{Against(group)}"));
        blocks.Add(new SpreadsheetOnly(Ranked(diagnosis)));
        if (diagnosis.Next is { } next)
        {
            blocks.Add(new Heading("Next test"));
            blocks.Add(new Paragraph(Figures.Sentence(next.Instruction)));
            blocks.Add(new Table(
                [new("if it shows", "outcome"), new("likely", "probability", true), new("it means", "meaning")],
                [.. next.Outcomes.Select(o => (IReadOnlyList<Cell>)[o.Outcome, Percent(o.Probability), Meaning(o)])]));
        }

        blocks.AddRange(CommonBlocks.FindingBlocks(diagnosis.Findings));
        blocks.Add(new Heading("How to read"));
        blocks.AddRange(finder.Notes.Select(n => new Paragraph(n.Message)));
        blocks.Add(CommonBlocks.Safety);
        return new Document(CommonBlocks.TitleOf(finder.Bike, "Faults"), diagnosis.Summary, blocks);
    }

    private static Table Ranked(Diagnosis diagnosis) => new(
        [new("rank", "rank", true), new("probability", "probability", true), new("kind", "kind"), new("part", "part"), new("sentence", "sentence")],
        [
            .. diagnosis.Ranked.SelectMany((g, i) => g.Alternatives.Select(a => (IReadOnlyList<Cell>)
            [
                CommonBlocks.Rating(i + 1), Figures.Cell(a.Probability, 4), string.Join(" and ", a.Faults.Select(f => f.Code)), string.Join(" and ", a.Faults.Select(f => f.Part)), a.Sentence,
            ])),
        ],
        IsMain: true);

    private static string Alike(FaultGroup group) => group.Alternatives.Length > 1
        ? $"\n   No reading tells it from: {string.Join("; ", group.Alternatives.Skip(1).Take(4).Select(a => string.Join(" and ", a.Faults.Select(f => f.Subject))))}."
        : "";

    private static string Against(FaultGroup group) =>
        group.Conflicting.IsEmpty ? "" : "\n   Against it: " + string.Join("; ", group.Conflicting.Select(a => a.Message)) + ".";

    // It begins with the outcome, which has a column of its own.
    private static string Meaning(TestOutcome outcome) =>
        outcome.Meaning.StartsWith(outcome.Outcome + ": ", StringComparison.Ordinal) ? outcome.Meaning[(outcome.Outcome.Length + 2)..] : outcome.Meaning;

    private static string Percent(double probability) => probability < 0.01 ? "under 1 %" : probability > 0.99 ? "over 99 %" : $"{Figures.Number(probability * 100, 0)} %";
}
