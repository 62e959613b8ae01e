using System.Collections.Immutable;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>faults</c> gives: the likeliest faults in sentences, conflicting evidence, and the next
/// test.</summary>
internal static class FaultsDocument
{
    private const int Most = 5;

    private static readonly Columns<FaultGroup> s_group = new()
    {
        { "probability", g => g.Probability },
        {
            "alternatives",
            new Columns<FaultExplanation>
            {
                { "probability", a => a.Probability },
                { "sentence", a => a.Sentence },
                {
                    "faults",
                    new Columns<Fault>
                    {
                        { "kind", f => f.Kind.ToString() },
                        { "part", f => f.Part },
                        { "resistanceOhm", f => f.Resistance?.Best },
                        { "lowestOhm", f => f.Resistance?.Low },
                        { "highestOhm", f => f.Resistance?.High },
                    },
                    a => a.Faults
                },
            },
            g => g.Alternatives
        },
        { "against", g => g.Conflicting.Select(a => a.Message).ToImmutableArray() },
    };

    private static readonly Columns<(int Rank, FaultExplanation Fault)> s_ranked = new()
    {
        { "rank", "rank", r => r.Rank },
        { "probability", "probability", r => r.Fault.Probability, "F4" },
        { "kind", "kind", r => string.Join(" and ", r.Fault.Faults.Select(f => f.Kind)) },
        { "part", "part", r => string.Join(" and ", r.Fault.Faults.Select(f => f.Part)) },
        { "sentence", "sentence", r => r.Fault.Sentence },
    };

    private static readonly Columns<TestOutcome> s_outcome = new()
    {
        { "reading", "outcome", o => o.Outcome },
        { "likely", "probability", o => new Cell(Percent(o.Probability), o.Probability, IsNumber: true) },
        { "meaning", "meaning", o => new Cell(Meaning(o), o.Meaning) },
    };

    private static readonly Columns<NextTest> s_next = new()
    {
        { "setting", n => n.Setting },
        { "point", n => n.Point },
        { "to", n => n.To },
        { "jumper", n => n.Jumper?.ToString() },
        { "unplugged", n => n.Unplugged },
        { "instrument", n => FaultWords.InstrumentWord(n.Instrument) },
        { "informationBits", n => n.ExpectedInformationGain },
        { "cost", n => n.Cost },
        { "instruction", n => n.Instruction },
        { "outcomes", s_outcome, n => n.Outcomes },
    };

    public static Document Of(FaultFinder finder, Diagnosis diagnosis) =>
        new(
            CommonBlocks.TitleOf(finder.Bike, "Faults"),
            diagnosis.Summary,
            ReadingsDocument.WithPositiveEarth(Cautions.OfWork(finder.Bike), finder.Notes),
            () =>
                [
                    new Heading("Likeliest first"),
                    .. diagnosis
                        .Ranked.Take(Most)
                        .Select(
                            (g, i) =>
                                new Paragraph(
                                    $"{i + 1}. {Percent(g.Probability)}  {g.Best.Sentence}{Alike(g)}{Against(g)}"
                                )
                        ),
                    s_ranked.Spreadsheet(diagnosis.Ranked.SelectMany((g, i) => g.Alternatives.Select(a => (i + 1, a)))),
                    .. diagnosis.Repair is { } repair
                        ? [new Heading("Repair"), new Paragraph(repair), .. Proof(diagnosis)]
                        : Array.Empty<Block>(),
                    .. diagnosis.Next is { } next
                        ?
                        [
                            new Heading("Next test"),
                            Cautions.OfTest(finder, next),
                            new Paragraph(Figures.Sentence(next.Instruction)),
                            s_outcome.Table(next.Outcomes),
                        ]
                        : Array.Empty<Block>(),
                    .. CommonBlocks.FindingBlocks(diagnosis.Findings),
                    new Heading("How to measure"),
                    .. finder.Notes.Where(n => Belongs(n, diagnosis.Next)).Select(n => new Paragraph(n.Message)),
                ],
            json =>
            {
                json.Write("bike", finder.Bike.Name);
                json.Write("engineRpm", finder.EngineSpeed);
                json.Write("summary", diagnosis.Summary);
                json.Write("nothingFound", diagnosis.NothingFound);
                json.Write("repair", diagnosis.Repair);
                json.Write("proof", diagnosis.Proof);
                json.Write("readings", diagnosis.Used.Length);
                json.Write("faults", s_group, diagnosis.Ranked);
                if (diagnosis.Next is { } next)
                    json.Write("nextTest", s_next, next);
                json.Write("findings", CommonBlocks.Finding, diagnosis.Findings);
            }
        )
        {
            StepCautions = diagnosis.Next is { } step ? [Cautions.OfTest(finder, step)] : [],
        };

    // How to measure resistance is for a test that does; positive earth is a caution.
    private static bool Belongs(Finding note, NextTest? next) =>
        note.Kind switch
        {
            FindingKind.OhmmeterOffBattery or FindingKind.OhmmeterOffCoil => next?.Instrument == Instrument.Ohmmeter,
            FindingKind.MeterOnPositiveEarth => false,
            _ => true,
        };

    private static Block[] Proof(Diagnosis diagnosis) =>
        diagnosis.Proof is { } proof ? [new Paragraph($"Afterwards: {proof}.")] : [];

    private static string Subjects(FaultExplanation explanation) =>
        string.Join(" and ", explanation.Faults.Select(f => f.Subject));

    private static string Alike(FaultGroup group) =>
        group.Alternatives.Length > 1
            ? $"\n   No reading distinguishes it from: "
                + string.Join("; ", group.Alternatives.Skip(1).Take(4).Select(Subjects))
                + "."
            : "";

    private static string Against(FaultGroup group) =>
        group.Conflicting.IsEmpty
            ? ""
            : "\n   Conflicting: " + string.Join("; ", group.Conflicting.Select(a => a.Message)) + ".";

    // It begins with the outcome, which has a column of its own.
    private static string Meaning(TestOutcome outcome) =>
        outcome.Meaning.StartsWith(outcome.Outcome + ": ", StringComparison.Ordinal)
            ? outcome.Meaning[(outcome.Outcome.Length + 2)..]
            : outcome.Meaning;

    private static string Percent(double probability) =>
        probability < 0.01 ? "under 1 %"
        : probability > 0.99 ? "over 99 %"
        : $"{Figures.Number(probability * 100, 0)} %";
}
