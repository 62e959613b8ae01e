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
    public static IEnumerable<(MethodInfo Method, IReadOnlyList<PublishedFigure> Figures)> Run()
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
            yield return (
                method,
                [.. Rows(method).SelectMany(row => Publication.Compared(() => method.Invoke(test, row)))]
            );
        }
    }

    /// <summary>The table as it stands in the document.</summary>
    public static string Generated()
    {
        var text = new StringBuilder(
            "| model | source | figures | largest deviation | tolerance |\n|---|---|---|---|---|\n"
        );
        var sources = Run()
            .Where(r => r.Figures.Count > 0)
            .GroupBy(r =>
                (
                    r.Method.GetCustomAttribute<AgainstAttribute>()!.Model,
                    r.Method.GetCustomAttribute<AgainstAttribute>()!.Source
                )
            )
            .OrderBy(g => g.Key.Model, StringComparer.Ordinal)
            .ThenBy(g => g.Key.Source, StringComparer.Ordinal);
        foreach (var source in sources)
        {
            PublishedFigure[] figures = [.. source.SelectMany(r => r.Figures)];
            bool copied = source.All(r => r.Method.GetCustomAttribute<AgainstAttribute>()!.Copied);
            string deviation =
                copied ? "copied from it"
                : figures.Max(f => f.Deviation) is { } most ? Percent(most)
                : "met";
            string allowed = copied || figures.Max(f => f.Allowed) is not { } widest ? "–" : Percent(widest);
            text.Append(
                CultureInfo.InvariantCulture,
                $"| {source.Key.Model} | {source.Key.Source} | {figures.Length} | {deviation} | {allowed} |\n"
            );
        }

        return text.ToString();
    }

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
