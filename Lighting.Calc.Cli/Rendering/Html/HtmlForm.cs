using System.Reflection;
using System.Security.Cryptography;
using System.Text;

namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>The fields of a page that is filled in, and the one script that saves them as a <c>readings.csv</c>:
/// nothing is sent or kept, and the page's policy allows this script alone, by its hash.</summary>
internal static class HtmlForm
{
    private static readonly string[] s_looks = ["dark", "dim", "good", "bright"];
    private static readonly Lazy<string> s_script = new(Read);

    /// <summary>What the policy of the page allows.</summary>
    public static string Policy =>
        $"; script-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(s_script.Value)))}'";

    /// <summary>A field: a number with a box for what is expected, or a choice of looks.</summary>
    public static void Field(Markup page, ReadingField field)
    {
        string id = page.NewId();
        if (field.IsLook)
        {
            page.Open("select", [("id", id), .. Data(field)]);
            page.Element("option", "", ("value", ""));
            foreach (string look in s_looks)
                page.Element("option", look);
            page.Close();
            return;
        }

        page.Void(
            "input",
            [
                ("id", id),
                ("type", "text"),
                ("inputmode", field.Row.Instrument == Instrument.Meter ? "text" : "decimal"),
                ("autocomplete", "off"),
                ("size", "7"),
                .. Data(field),
            ]
        );
        if (field.Expected.Length == 0)
            return;
        page.Open("label").Void("input", ("type", "checkbox"), ("id", $"{id}e")).Text(" as expected").Close();
    }

    /// <summary>The button that saves, and how many fields are filled in.</summary>
    public static void Save(Markup page) =>
        page.Open("p", ("class", "save"))
            .Element("button", "Save as readings.csv", ("id", "save"), ("type", "button"))
            .Text(" ")
            .Element("span", "", ("id", "taken"), ("role", "status"))
            .Close();

    public static void Script(Markup page) => page.Open("script").Own(s_script.Value).Close();

    private static (string, string?)[] Data(ReadingField field) =>
        [
            ("class", "fill"),
            ("aria-label", field.Label),
            ("data-when", field.Row.When.ToString()),
            ("data-point", field.Row.Point),
            ("data-instrument", FaultWords.InstrumentWord(field.Row.Instrument)),
            ("data-jumper", field.Row.Jumper?.ToString()),
            ("data-expected", field.Expected.Length == 0 ? null : field.Expected),
        ];

    private static string Read()
    {
        using Stream stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream("readings-form.js")
            ?? throw new InvalidOperationException("The program lacks its readings-form.js.");
        return new StreamReader(stream).ReadToEnd().ReplaceLineEndings("\n");
    }
}
