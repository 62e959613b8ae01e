namespace Lighting.Calc;

/// <summary>How probable single faults, pairs of faults and what is not listed are against each other.</summary>
/// <param name="Single">That it is one fault, or something that is not listed and resembles one.</param>
/// <param name="Pairs">Those of the pairs.</param>
/// <param name="Resembling">Those of what is not listed and resembles each pair.</param>
internal sealed record PairShares(double Single, double[] Pairs, double[] Resembling)
{
    public static PairShares Of(Posterior posterior, IReadOnlyCollection<FaultPair> pairs)
    {
        double most = pairs
            .SelectMany(p => new[] { p.LogWeight, p.LogResembling })
            .Append(posterior.LogEvidence)
            .Max();
        double single = Math.Exp(posterior.LogEvidence - most);
        double[] two = [.. pairs.Select(p => Math.Exp(p.LogWeight - most))],
            like = [.. pairs.Select(p => Math.Exp(p.LogResembling - most))];
        double sum = single + two.Sum() + like.Sum();
        return new PairShares(single / sum, [.. two.Select(w => w / sum)], [.. like.Select(w => w / sum)]);
    }
}
