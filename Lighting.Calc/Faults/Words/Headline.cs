namespace Lighting.Calc;

/// <summary>The summary of a diagnosis: what is certain first, then the likeliest place, then what it does not
/// explain.</summary>
internal static class Headline
{
    private const double Likely = 0.5;

    public static string Of(
        FaultModel model,
        FaultGroup[] groups,
        int readings,
        bool nothing,
        Explainer explainer,
        (string Words, double Probability)? led,
        (FaultGroup Group, double Probability)? named
    )
    {
        FaultGroup first = groups[0];
        if (nothing)
            return $"No fault found{(first.Probability < Likely ? " so far" : "")}: "
                + $"{(readings == 1 ? "the reading is" : "all readings are")} normal "
                + $"(probability of no fault: {FaultWords.Percent(first.Probability)}).";
        if (readings == 0)
            return "No readings yet: start with the first test.";
        string conflict = first.Conflicting.IsEmpty ? "" : $"\nNot explained by it: {first.Conflicting[0].Message}.";
        string others =
            first.Alternatives.Length > 1
                ? $", or {first.Alternatives.Length - 1} more that no reading can distinguish from it"
                : "";
        string share = $"({FaultWords.Percent(first.Probability)}{others})";
        if (first.IsNotListed)
            return $"None of the faults I know explains this {share}.\n{explainer.LeftToLookAt()}";

        if (
            led is var (consequence, probability)
            && probability > Likely
            && !SaysIt(model, first, consequence)
        )
            return $"{consequence} ({FaultWords.Percent(probability)}). Why is not clear yet{Likeliest()}.{conflict}";
        // It is there for certain, and only a second fault is in question.
        if (named is var (there, certainty) && there.Probability < Likely)
            return $"{char.ToUpperInvariant(there.Best.Sentence[0])}{there.Best.Sentence[1..]} "
                + $"({FaultWords.Percent(certainty)}). Whether there is a second fault is not clear yet.";
        if (explainer.IsNormal)
            return $"{(readings == 1 ? "The reading is" : "All readings are")} normal so far; the likeliest remaining "
                + $"fault is {first.Best.Sentence} {share}.";
        return first.Probability < Likely
            ? $"No clear result yet; the likeliest fault is {first.Best.Sentence} {share}.{conflict}"
            : $"{char.ToUpperInvariant(first.Best.Sentence[0])}{first.Best.Sentence[1..]} {share}.{conflict}";

        // Of what leads to it, a fuse that has blown by itself included, the likeliest.
        string Likeliest() =>
            groups.FirstOrDefault(g => g.Best.Faults is [var one] && LeadsTo(model, one, led!.Value.Words)) is { } cause
                ? $"; likeliest: {cause.Best.Sentence} ({FaultWords.Percent(cause.Probability)}"
                    + (cause == first ? $"{others})" : ")")
                : "";
    }

    private static bool LeadsTo(FaultModel model, Fault fault, string consequence) =>
        model.Families.Any(f => f.Consequence == consequence && f.Is(fault));

    /// <summary>What several faults lead to, such as a blown fuse: as likely as all of them together, with what
    /// resembles them; null where none leads to anything.</summary>
    public static (string Words, double Probability)? Consequence(
        FaultModel model,
        Posterior posterior,
        double single
    )
    {
        (string Words, double Probability)? most = null;
        foreach (
            IGrouping<string, int> group in Enumerable
                .Range(0, model.Families.Length)
                .Where(f => model.Families[f].Consequence is not null)
                .GroupBy(f => model.Families[f].Consequence!)
        )
            if (
                single * group.Sum(f => posterior.FamilyWeights[f] + posterior.ResemblingFamilies[f]) is var sum
                && sum > (most?.Probability ?? 0)
            )
                most = (group.Key, sum);
        return most;
    }

    // One place that is named says it by itself.
    private static bool SaysIt(FaultModel model, FaultGroup group, string consequence) =>
        group.Probability > 0.9
        && group.Alternatives.Length == 1
        && LeadsTo(model, group.Best.Faults[0], consequence);
}
