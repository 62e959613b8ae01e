using System.CommandLine.Parsing;
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
}
