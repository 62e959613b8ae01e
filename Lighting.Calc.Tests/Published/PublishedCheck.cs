using System.Text.RegularExpressions;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Published;

/// <summary>What a published check compared, and why it may not stand in the table of accuracies.</summary>
internal sealed partial class PublishedCheck
{
    private const double Rounding = 1e-12;

    private static readonly Lazy<HashSet<string>> s_readByLibrary = new(() =>
        [
            .. Directory
                .EnumerateFiles(Path.Combine(CliProcess.Root, "Lighting.Calc"), "*.cs", SearchOption.AllDirectories)
                .SelectMany(f => LoadedTable().Matches(File.ReadAllText(f)))
                .Select(m => m.Groups[1].Value),
        ]
    );

    public List<PublishedFigure> Figures { get; } = [];

    /// <summary>Tables of which the printed side was read.</summary>
    public HashSet<string> Tables { get; } = [];

    /// <summary>Names of the tables that the library reads.</summary>
    public static IReadOnlySet<string> ReadByLibrary => s_readByLibrary.Value;

    /// <summary>Why a check is refused; null where it may stand.</summary>
    public string? Complaint(AgainstAttribute against)
    {
        if (!Enum.IsDefined(against.Kind) || against.Kind == CheckKind.Unstated)
            return "it does not state its kind";
        if (against.Kind != CheckKind.Model)
            return null;
        if (Tables.FirstOrDefault(ReadByLibrary.Contains) is { } table)
            return $"both its sides come from {table}.csv, which the library reads: it is copied";
        bool isExact = Figures.Count > 0 && Figures.All(f => f.Deviation is < Rounding);
        if (isExact && against.Exact is null)
            return "every figure is met to the last digit: it is copied or arithmetic, or says why in Exact";
        return !isExact && against.Exact is not null ? "Exact is stated, and not every figure is" : null;
    }

    [GeneratedRegex("\\.Load\\(\"([^\"]+)\"\\)")]
    private static partial Regex LoadedTable();
}
