using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using Xunit.Sdk;
using Xunit.v3;

namespace Lighting.Calc.Tests.Published;

/// <summary>The table of accuracies: every published check is run, and the largest deviation from each source is what
/// it found.</summary>
internal static class AccuracyTable
{
    private const string First = "<!-- accuracy: generated -->\n";
    private const string Last = "<!-- accuracy: end -->";

    /// <summary>What each check compared, with the method that did.</summary>
    public static IEnumerable<(MethodInfo Method, PublishedCheck Check)> Run()
    {
        IEnumerable<MethodInfo> checks = typeof(AccuracyTable)
            .Assembly.GetTypes()
            .Where(t => t.Namespace == typeof(AccuracyTable).Namespace && t != typeof(AccuracyTests))
            .SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly))
            .Where(m => m.GetCustomAttribute<FactAttribute>() is not null)
            .OrderBy(m => m.DeclaringType!.Name, StringComparer.Ordinal)
            .ThenBy(m => m.Name, StringComparer.Ordinal);
        foreach (MethodInfo method in checks)
        {
            object test = Activator.CreateInstance(method.DeclaringType!)!;
            var whole = new PublishedCheck();
            foreach (object?[] row in Rows(method))
            {
                PublishedCheck part = Publication.Compared(() => method.Invoke(test, row));
                whole.Figures.AddRange(part.Figures);
                whole.Tables.UnionWith(part.Tables);
            }

            yield return (method, whole);
        }
    }

    /// <summary>The checks that compare figures, by what they prove.</summary>
    public static ILookup<CheckKind, (AgainstAttribute Against, PublishedCheck Check)> ByKind() =>
        Run()
            .Where(r => r.Check.Figures.Count > 0)
            .Select(r => (Against: r.Method.GetCustomAttribute<AgainstAttribute>()!, r.Check))
            .ToLookup(r => r.Against.Kind);

    /// <summary>The table as it stands in the document.</summary>
    public static string Generated()
    {
        var checks = ByKind();
        int Count(CheckKind kind) => checks[kind].Sum(c => c.Check.Figures.Count);
        int misfits = checks[CheckKind.Model].Sum(c => c.Check.Figures.Count(f => !f.IsMet));
        var text = new StringBuilder();
        text.Append(
            CultureInfo.InvariantCulture,
            $"**{Count(CheckKind.Model)} figures of {Publications(checks[CheckKind.Model])} publications hold a model "
                + $"against print**, {misfits} of them misfits.\nApart from these "
                + $"{Count(CheckKind.Copied)} figures are copied and {Count(CheckKind.Arithmetic)} are arithmetic.\n\n"
                + $"Models against print:\n\n"
                + $"| model | source | figures | largest deviation | tolerance |\n|---|---|---|---|---|\n"
        );
        foreach (var source in Sources(checks[CheckKind.Model]))
        {
            PublishedFigure[] figures = [.. source.SelectMany(c => c.Check.Figures)];
            int missed = figures.Count(f => !f.IsMet);
            string misfit =
                missed == 0 ? ""
                : missed == figures.Length ? ", a misfit"
                : string.Create(CultureInfo.InvariantCulture, $", {missed} of {figures.Length} misfits");
            string deviation =
                figures.Max(f => f.Deviation) is { } most ? Percent(most)
                : missed == 0 ? "met"
                : string.Create(CultureInfo.InvariantCulture, $"{figures.Length - missed} met");
            string allowed = figures.Max(f => f.Allowed) is { } widest ? Percent(widest) : "–";
            text.Append(
                CultureInfo.InvariantCulture,
                $"| {source.Key.Model} | {source.Key.Source} | {figures.Length} | {deviation}{misfit} | {allowed} |\n"
            );
        }

        foreach ((CheckKind kind, string title) in new[]
        {
            (CheckKind.Copied, "Copied: the library reads these publications' own figures."),
            (CheckKind.Arithmetic, "Arithmetic: the inputs decide."),
        })
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"\n{title}\n\n| what | source | figures |\n|---|---|---|\n"
            );
            foreach (var source in Sources(checks[kind]))
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"| {source.Key.Model} | {source.Key.Source} | {source.Sum(c => c.Check.Figures.Count)} |\n"
                );
        }

        return text.ToString();
    }

    /// <summary>How many publications some checks have.</summary>
    public static int Publications(IEnumerable<(AgainstAttribute Against, PublishedCheck Check)> checks) =>
        checks.Select(c => c.Against.Publication).Distinct(StringComparer.Ordinal).Count();

    private static IEnumerable<
        IGrouping<(string Model, string Source), (AgainstAttribute Against, PublishedCheck Check)>
    > Sources(IEnumerable<(AgainstAttribute Against, PublishedCheck Check)> checks) =>
        checks
            .GroupBy(c => (c.Against.Model, c.Against.Source))
            .OrderBy(g => g.Key.Model, StringComparer.Ordinal)
            .ThenBy(g => g.Key.Source, StringComparer.Ordinal);

    /// <summary>The table between its marks in a document.</summary>
    public static string In(string document)
    {
        int first = document.IndexOf(First, StringComparison.Ordinal),
            last = document.IndexOf(Last, StringComparison.Ordinal);
        Assert.True(first >= 0 && last > first, $"The document holds no table between {First.Trim()} and {Last}.");
        return document[(first + First.Length)..last];
    }

    /// <summary>The document with another table between its marks.</summary>
    public static string With(string document, string table) =>
        document.Replace(First + In(document) + Last, First + table + Last, StringComparison.Ordinal);

    private static IEnumerable<object?[]> Rows(MethodInfo method)
    {
        IDataAttribute[] data = [.. method.GetCustomAttributes().OfType<IDataAttribute>()];
        if (data.Length == 0)
            return
            [
                [],
            ];
        object?[][] rows =
        [
            .. data.SelectMany(d =>
                    d is MemberDataAttribute member
                        ? (
                            (IEnumerable)method.DeclaringType!.GetProperty(member.MemberName)!.GetValue(null)!
                        ).Cast<ITheoryDataRow>()
                        : d.GetData(method, new DisposalTracker()).AsTask().GetAwaiter().GetResult()
                )
                .Select(r => r.GetData()),
        ];
        Assert.True(rows.Length > 0, $"{method.DeclaringType!.Name}.{method.Name} has no rows.");
        return rows.Select(r => Filled(r, method));
    }

    // What the runner does with parameters that are left out, or are as many as there are.
    private static object?[] Filled(object?[] row, MethodInfo method)
    {
        ParameterInfo[] parameters = method.GetParameters();
        if (
            parameters is not [.., { } last]
            || !last.IsDefined(typeof(ParamArrayAttribute))
            || (row.Length == parameters.Length && row[^1]?.GetType() == last.ParameterType)
        )
            return [.. row, .. parameters.Skip(row.Length).Select(p => p.DefaultValue)];
        var rest = Array.CreateInstance(last.ParameterType.GetElementType()!, row.Length - parameters.Length + 1);
        for (int i = 0; i < rest.Length; i++)
            rest.SetValue(row[parameters.Length - 1 + i], i);
        return [.. row[..(parameters.Length - 1)], rest];
    }

    // Two figures; what rounding alone leaves is nothing.
    private static string Percent(double share) =>
        share < 1e-9 ? "0" : string.Create(CultureInfo.InvariantCulture, $"{Rounded(share * 100)} %");

    private static string Rounded(double percent)
    {
        int decimals = Math.Max(0, 1 - (int)Math.Floor(Math.Log10(percent)));
        return decimals > 4
            ? "< 0.0001"
            : Math.Round(percent, Math.Min(decimals, 15)).ToString(CultureInfo.InvariantCulture);
    }
}
