using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc.Cli.Commands;

/// <summary>Reads an option's text by the same rules as a list's cell.</summary>
internal static class OptionText
{
    /// <summary>For an option or argument that names a file or folder.</summary>
    public static void RefuseEmptyPath(SymbolResult path)
    {
        if (path.Tokens.Any(t => t.Value.Length == 0))
            path.AddError(
                $"{(path is OptionResult option ? option.Option.Name : ((ArgumentResult)path).Argument.Name)}: '' "
                    + $"names no file or folder."
            );
    }

    /// <summary>The quantity of an option; null where it is not given, or wrong.</summary>
    public static T? Quantity<T>(
        ParseResult parsed,
        Option<string?> option,
        QuantityText<T> reader,
        Func<T, bool> inRange,
        List<string> wrong
    )
        where T : struct, IQuantity =>
        parsed.GetValue(option) is { } text ? Quantity(reader, option.Name, text, inRange, wrong) : null;

    public static T? Quantity<T>(
        QuantityText<T> reader,
        string option,
        string text,
        Func<T, bool> inRange,
        List<string> wrong
    )
        where T : struct, IQuantity
    {
        if (!reader.TryParse(text, out T value, out TextProblem? problem))
        {
            wrong.Add($"{option}: {problem}.");
            return null;
        }

        if (inRange(value))
            return value;
        wrong.Add($"{option}: '{text}' is out of range.");
        return null;
    }

    public static T? Required<T>(
        QuantityText<T> reader,
        string option,
        string? text,
        Func<T, bool> inRange,
        List<string> wrong
    )
        where T : struct, IQuantity
    {
        if (text is not null)
            return Quantity(reader, option, text, inRange, wrong);
        wrong.Add($"{option} is needed where no bike is given.");
        return null;
    }

    public static WireSize? Wire(string option, string? text, List<string> wrong)
    {
        if (text is null)
        {
            wrong.Add($"{option} is needed where no bike is given.");
            return null;
        }

        if (WireText.TryParse(text, out WireSize? wire, out TextProblem? problem))
            return wire;
        wrong.Add($"{option}: {problem}.");
        return null;
    }

    /// <summary>Sizes separated by commas.</summary>
    public static IReadOnlyList<WireSize> Wires(string option, string text, List<string> wrong) =>
        [.. text.Split(',', StringSplitOptions.TrimEntries).Select(t => Wire(option, t, wrong)).OfType<WireSize>()];

    /// <summary>A whole number.</summary>
    public static int? Whole(string option, string? text, int least, List<string> wrong)
    {
        if (text is null)
            return null;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int count) && count >= least)
            return count;
        wrong.Add($"{option}: '{text}' is not a whole number from {least}.");
        return null;
    }
}
