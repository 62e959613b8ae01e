using System.Text.Encodings.Web;
using System.Text.Json;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>JSON results: camel case, SI numbers with the unit at the end of the key, full precision, a schema number on top.</summary>
internal static class JsonRenderer
{
    public const int Schema = 1;

    public static void Render(TextWriter output, Action<Utf8JsonWriter> write)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteNumber("schema", Schema);
            write(json);
            json.WriteEndObject();
        }

        output.Write(System.Text.Encoding.UTF8.GetString(buffer.GetBuffer(), 0, (int)buffer.Length));
        output.Write('\n');
    }

    public static void Array<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (T item in items)
        {
            json.WriteStartObject();
            write(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    public static void Number(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } known)
            json.WriteNumber(name, known);
        else
            json.WriteNull(name);
    }

    public static void Setting(this Utf8JsonWriter json, string name, Setting setting)
    {
        json.WriteStartObject(name);
        foreach (SwitchPosition position in setting.Positions)
            json.WriteString(position.Switch, position.Position);
        json.WriteEndObject();
    }

    public static void Findings(this Utf8JsonWriter json, IEnumerable<Finding> findings) => json.Array("findings", findings, finding =>
    {
        json.WriteString("severity", SeverityWord(finding.Severity));
        json.WriteString("subject", finding.Subject);
        json.WriteString("message", finding.Message);
    });

    public static string SeverityWord(Severity severity) => severity switch
    {
        Severity.Note => "note",
        Severity.Caution => "caution",
        Severity.Fault => "fault",
        _ => throw new InvalidOperationException($"Unknown severity {severity}."),
    };
}
