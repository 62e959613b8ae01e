using System.CommandLine;
using System.CommandLine.Parsing;
using Lighting.Calc.Cli.Rendering;
using Lighting.Calc.Cli.Rendering.Html;

namespace Lighting.Calc.Cli.Commands;

/// <summary>The options that say in what form a result is given, and where it goes.</summary>
internal sealed class OutputOptions
{
    private const string FormatName = "--format";

    private readonly Option<string> _format = new(FormatName)
    {
        Description = "text (default), csv, json or html (a page to look at and to print).",
        DefaultValueFactory = _ => "text",
        HelpName = "text|csv|json|html",
    };
    private readonly Option<string?> _out = new("--out")
    {
        Description = "A file for the result instead of standard output.",
        HelpName = "FILE",
    };

    public OutputOptions(Command command, bool isDrawing = false)
    {
        _format.AcceptOnlyFromAmong(["text", "csv", "json", "html", .. isDrawing ? ["svg"] : Array.Empty<string>()]);
        if (isDrawing)
        {
            _format.Description =
                "svg (default, the drawing alone), text, csv, json or html (a page to look at and to print).";
            _format.HelpName = "svg|text|csv|json|html";
            _format.DefaultValueFactory = _ => "svg";
        }

        command.Add(_format);
        command.Add(_out);
    }

    /// <summary>The form asked for.</summary>
    public string Format(ParseResult parsed) => parsed.GetRequiredValue(_format);

    /// <summary>Whether the words ask for JSON, whatever command they are of.</summary>
    public static bool AsksForJson(ParseResult parsed) =>
        parsed.CommandResult.Children.OfType<OptionResult>().FirstOrDefault(o => o.Option.Name == FormatName)
            is { Tokens: [.., { Value: "json" }] };

    /// <summary>Opens where a result goes that is written row by row.</summary>
    /// <exception cref="InputException">The file of <c>--out</c> cannot be written, or is one of those that are
    /// read.</exception>
    public RowOutput OpenRows(ParseResult parsed, CommandConsole console)
    {
        InputGuard.Check(parsed, _out);
        return RowOutput.Open(parsed.GetValue(_out), console.Output);
    }

    /// <summary>Gives a result in the form asked for.</summary>
    /// <param name="parsed">The words.</param>
    /// <param name="console">Where it goes without <c>--out</c>.</param>
    /// <param name="document">The result.</param>
    public void Write(ParseResult parsed, CommandConsole console, Document document)
    {
        string? path = parsed.GetValue(_out);
        if (path is null)
        {
            Render(parsed, console.Output, console.IsTerminal, document);
            console.Output.Flush();
            return;
        }

        InputGuard.Check(parsed, _out);
        // Rendered whole before anything is written.
        var text = new StringWriter();
        Render(parsed, text, isTerminal: false, document);
        ResultFile.Write(path, text.ToString());
    }

    private void Render(ParseResult parsed, TextWriter output, bool isTerminal, Document document)
    {
        switch (parsed.GetRequiredValue(_format))
        {
            case "json":
                JsonRenderer.Render(output, document);
                break;
            case "csv":
                CsvRenderer.Render(document, output);
                break;
            case "svg":
                output.Write(
                    SvgCircuit.Alone(
                        PageOnly.Shown(document.Blocks()).OfType<CircuitBlock>().First(),
                        document.Cautions
                    )
                );
                break;
            case "html":
                HtmlRenderer.Render(document, output);
                break;
            default:
                TextRenderer.Render(document, output, isTerminal);
                break;
        }
    }
}
