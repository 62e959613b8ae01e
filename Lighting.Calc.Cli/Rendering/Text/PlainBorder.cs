using Spectre.Console;
using Spectre.Console.Rendering;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>A rule under the headings, and nothing else.</summary>
internal sealed class PlainBorder : TableBorder
{
    public override bool Visible => true;

    public override string GetPart(TableBorderPart part) =>
        part is TableBorderPart.HeaderBottom or TableBorderPart.HeaderBottomSeparator ? "-" : " ";
}
