using Lighting.Calc.Tests.Cli;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>A page as the browser prints it.</summary>
internal sealed class PrintedPdf
{
    // The margins that hold the running header and the number of the sheet, in points.
    private const double Margin = 34;

    private PrintedPdf(IReadOnlyList<PrintedSide> sides) => Sides = sides;

    public IReadOnlyList<PrintedSide> Sides { get; }

    /// <summary>Prints a page on a paper.</summary>
    public static PrintedPdf Of(TemporaryFolder folder, string page, string paper)
    {
        string file = folder.Write(
                "page.html",
                page.Replace(
                    "</style>",
                    $"@page {{ size: {paper}; }} @page sheet {{ size: {paper}; }} "
                        + $"@page circuit {{ size: {paper} landscape; }}</style>",
                    StringComparison.Ordinal
                )
            ),
            pdf = Path.Combine(folder.Path, "page.pdf");
        (_, string[] console) = Browser.Open(folder, file, "--no-pdf-header-footer", $"--print-to-pdf={pdf}");
        Assert.Empty(console);
        using PdfDocument document = PdfDocument.Open(pdf);
        return new PrintedPdf([
            .. document
                .GetPages()
                .Select(p => new PrintedSide(
                    p.Width,
                    p.Height,
                    Words(p.Letters, l => l.Location.Y > p.Height - Margin),
                    Words(p.Letters, l => l.Location.Y < Margin),
                    Words(p.Letters, l => l.Location.Y <= p.Height - Margin && l.Location.Y >= Margin),
                    [.. p.Letters.Where(l => l.Value.Trim().Length > 0)]
                )),
        ]);
    }

    // What the printing leaves out between words varies: it is left out altogether.
    private static string Words(IEnumerable<Letter> letters, Func<Letter, bool> which) =>
        Squeezed(string.Concat(letters.Where(which).Select(l => l.Value)));

    /// <summary>A text without its spaces, two letters printed as one set apart.</summary>
    public static string Squeezed(string text) =>
        string.Concat(text.Where(c => !char.IsWhiteSpace(c)))
            .Replace("\uFB01", "fi", StringComparison.Ordinal)
            .Replace("\uFB02", "fl", StringComparison.Ordinal);
}

/// <summary>One printed side, sizes in points.</summary>
internal sealed record PrintedSide(
    double Width,
    double Height,
    string Header,
    string Footer,
    string Body,
    IReadOnlyList<Letter> Letters
)
{
    /// <summary>How far down it is printed, as a share of its height; its number at the foot does not count.</summary>
    public double Filled =>
        1 - Letters.Where(l => l.Location.Y >= 34).Select(l => l.Location.Y).DefaultIfEmpty(Height).Min() / Height;
}
