namespace Lighting.Calc;

/// <summary>Makes one finding of those that share a cause.</summary>
internal static class FindingTogether
{
    /// <summary>
    /// Findings of one kind, severity, limit and detail as one, in the place of the first: its subject is the worst of
    /// them, the others are its
    /// <see cref="Finding.Parts"/> and their values its <see cref="Finding.Figures"/>, worst first.
    /// </summary>
    /// <param name="findings">The findings; those of one kind have the same unit, or none has a value.</param>
    public static IEnumerable<Finding> TogetherByCause(this IEnumerable<Finding> findings) =>
        findings.GroupBy(f => (f.Kind, f.Severity, f.Limit, f.Detail)).Select(g => Of([.. g]));

    /// <summary>The same of findings whose detail is the path of each: that of the worst remains.</summary>
    public static IEnumerable<Finding> TogetherByKind(this IEnumerable<Finding> findings) =>
        findings.GroupBy(f => (f.Kind, f.Severity, f.Limit)).Select(g => Of([.. g]));

    private static Finding Of(Finding[] alike)
    {
        if (alike is [var one])
            return one;
        Finding[] ordered = [.. alike.OrderByDescending(f => f.Value is { } value ? Math.Abs((double)value.Value) : 0)];
        Finding worst = ordered[0];
        return new Finding(worst.Kind, worst.Severity, worst.Subject)
        {
            Value = worst.Value,
            Limit = worst.Limit,
            Setting = worst.Setting,
            FurtherSettings = worst.FurtherSettings,
            Detail = worst.Detail,
            Parts = [.. ordered.Skip(1).Select(f => f.Subject)],
            Figures = [.. ordered.Skip(1).Select(f => f.Value).OfType<UnitsNet.IQuantity>()],
        };
    }
}
