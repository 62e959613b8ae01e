using System.Globalization;
using System.Text;

namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>Writes markup that is both HTML and well-formed XML. All text and every attribute's value is escaped here,
/// and nowhere else.</summary>
internal sealed class Markup
{
    private readonly StringBuilder _text = new();
    private readonly Stack<string> _open = new();
    private int _ids;

    /// <summary>Begins an element; attributes without a value are left out.</summary>
    public Markup Open(string tag, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(tag, attributes);
        _text.Append('>');
        _open.Push(tag);
        return this;
    }

    /// <summary>Ends the innermost open element.</summary>
    public Markup Close()
    {
        _text.Append("</").Append(_open.Pop()).Append('>');
        return this;
    }

    /// <summary>An element that has no content.</summary>
    public Markup Void(string tag, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Start(tag, attributes);
        _text.Append("/>");
        return this;
    }

    /// <summary>An element that holds a text.</summary>
    public Markup Element(string tag, string text, params ReadOnlySpan<(string Name, string? Value)> attributes) =>
        Open(tag, attributes).Text(text).Close();

    /// <summary>Text, escaped.</summary>
    public Markup Text(string text)
    {
        Escape(text);
        return this;
    }

    /// <summary>Several lines of text in one element.</summary>
    public Markup Lines(string text)
    {
        string[] lines = text.Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            if (i > 0)
                Void("br");
            Text(lines[i]);
        }

        return this;
    }

    /// <summary>The program's own text, as it stands: a style sheet.</summary>
    public Markup Own(string text)
    {
        _text.Append(text);
        return this;
    }

    /// <summary>An id that no other element of the page has.</summary>
    public string NewId() => $"i{(++_ids).ToString(CultureInfo.InvariantCulture)}";

    /// <summary>Begins a picture with its alternative text.</summary>
    public Markup OpenPicture(
        string title,
        string description,
        params ReadOnlySpan<(string Name, string? Value)> attributes
    )
    {
        string id = $"p{(++_ids).ToString(CultureInfo.InvariantCulture)}";
        Open(
            "svg",
            [
                ("xmlns", "http://www.w3.org/2000/svg"),
                ("role", "img"),
                ("aria-labelledby", $"{id}t {id}d"),
                .. attributes,
            ]
        );
        return Element("title", title, ("id", id + "t")).Element("desc", description, ("id", id + "d"));
    }

    /// <summary>Begins a picture that only repeats words beside it: readers pass over it.</summary>
    public Markup OpenHidden(params ReadOnlySpan<(string Name, string? Value)> attributes) =>
        Open("svg", [("xmlns", "http://www.w3.org/2000/svg"), ("aria-hidden", "true"), .. attributes]);

    /// <summary>A coordinate.</summary>
    public static string Number(double value)
    {
        string text = value.ToString("0.##", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    /// <summary>A share of the whole, as a coordinate.</summary>
    public static string Share(double share) => Number(share * 100) + "%";

    /// <inheritdoc/>
    public override string ToString() =>
        _open.Count == 0 ? _text.ToString() : throw new InvalidOperationException($"<{_open.Peek()}> is still open.");

    private void Start(string tag, ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        _text.Append('<').Append(tag);
        foreach ((string name, string? value) in attributes)
        {
            if (value is null)
                continue;
            _text.Append(' ').Append(name).Append("=\"");
            Escape(value);
            _text.Append('"');
        }
    }

    private void Escape(string text)
    {
        foreach (Rune rune in text.EnumerateRunes())
        {
            switch (rune.Value)
            {
                case '&':
                    _text.Append("&amp;");
                    break;
                case '<':
                    _text.Append("&lt;");
                    break;
                case '>':
                    _text.Append("&gt;");
                    break;
                case '"':
                    _text.Append("&quot;");
                    break;
                case '\'':
                    _text.Append("&#39;");
                    break;
                // What neither HTML nor XML may hold is shown as a character that could not be.
                case < 0x20 and not ('\t' or '\n' or '\r'):
                case >= 0x7F and < 0xA0:
                case 0xFFFE or 0xFFFF:
                    _text.Append('\uFFFD');
                    break;
                default:
                    _text.Append(rune.ToString());
                    break;
            }
        }
    }
}
