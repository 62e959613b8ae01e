using System.Text.RegularExpressions;

namespace Lighting.Calc.Cli;

/// <summary>The message of an exception for a person: without the name of a parameter that the framework adds behind
/// it.</summary>
internal static partial class PlainMessage
{
    public static string Of(Exception problem) => Addition().Replace(problem.Message, "");

    [GeneratedRegex(@"\s*\(Parameter '[^']*'\)|\s*Actual value was [^\n]*", RegexOptions.CultureInvariant)]
    private static partial Regex Addition();
}
