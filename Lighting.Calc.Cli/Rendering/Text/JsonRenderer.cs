using System.Collections.Immutable;
using System.Text.Json;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>JSON results: camel case, SI numbers with the unit at the end of the key, 12 significant digits, a schema
/// number on top.</summary>
internal static class JsonRenderer
{
    public const int Schema = BikeReportWriter.Schema;

    public static void Render(TextWriter output, Document document)
    {
        // Spelt out as JSON itself may spell them: the texts are the same.
        output.Write(VisibleText.Of(JsonText.Of(json => Write(json, document)), keepLines: true));
        output.Write('\n');
    }

    private static void Write(Utf8JsonWriter json, Document document)
    {
        json.WriteStartObject();
        json.WriteNumber("schema", Schema);
        json.Write("result", document.Result);
        string[] cautions =
        [
            .. document
                .StepCautions.Prepend(document.Cautions)
                .OfType<CautionList>()
                .SelectMany(c => c.Texts)
                .Distinct(),
        ];
        if (cautions.Length > 0)
            json.Write("cautions", cautions.ToImmutableArray());
        document.Json(json);
        json.WriteEndObject();
    }

    /// <summary>Writes a value, null where it is unknown.</summary>
    public static void Write(this Utf8JsonWriter json, string key, Cell cell)
    {
        json.WritePropertyName(key);
        switch (cell.Json ?? cell.Written)
        {
            case null:
                json.WriteNullValue();
                break;
            case double number:
                json.WriteNumberValue(number);
                break;
            case long number:
                json.WriteNumberValue(number);
                break;
            case bool holds:
                json.WriteBooleanValue(holds);
                break;
            case string text:
                json.WriteStringValue(text);
                break;
            case Setting setting:
                json.WriteStartObject();
                foreach (SwitchPosition position in setting.Positions)
                    json.WriteString(position.Switch, position.Position);
                json.WriteEndObject();
                break;
            case IEnumerable<string> texts:
                json.WriteStartArray();
                foreach (string text in texts)
                    json.WriteStringValue(text);
                json.WriteEndArray();
                break;
            case { } other:
                throw new InvalidOperationException($"No JSON form for {other.GetType().Name}.");
        }
    }

    /// <summary>Writes an array of objects.</summary>
    public static void Write<T>(this Utf8JsonWriter json, string key, Columns<T> columns, IEnumerable<T> items)
    {
        json.WriteStartArray(key);
        foreach (T item in items)
        {
            json.WriteStartObject();
            columns.Write(json, item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>Writes an object, null where it is unknown.</summary>
    public static void Write<T>(this Utf8JsonWriter json, string key, Columns<T> columns, T? item)
        where T : class
    {
        if (item is null)
        {
            json.WriteNull(key);
            return;
        }

        json.WriteStartObject(key);
        columns.Write(json, item);
        json.WriteEndObject();
    }

    /// <summary>Writes a value before and after a change.</summary>
    public static void Pair(this Utf8JsonWriter json, string key, Cell before, Cell after)
    {
        json.WriteStartObject(key);
        json.Write("before", before);
        json.Write("after", after);
        json.WriteEndObject();
    }
}
