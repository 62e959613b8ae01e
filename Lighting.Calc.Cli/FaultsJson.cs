using System.Text.Json;
using Lighting.Calc.Cli.Rendering;

namespace Lighting.Calc.Cli;

/// <summary>What is wrong with the input as JSON, for a program that asked for JSON: an object a fault.</summary>
internal static class FaultsJson
{
    public static string Of(InputException wrong) =>
        VisibleText.Of(JsonText.Of(json => Write(json, wrong)), keepLines: true);

    private static void Write(Utf8JsonWriter json, InputException wrong)
    {
        json.WriteStartObject();
        json.WriteNumber("schema", JsonRenderer.Schema);
        json.WriteString("result", "faults of the input");
        json.WriteStartArray("faults");
        foreach (ListFault fault in wrong.Faults)
            Write(json, fault);
        if (wrong.Faults.Count == 0)
            foreach (string message in wrong.Messages)
                Write(json, new ListFault { File = "", Problem = message }, message);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, ListFault fault, string? message = null)
    {
        json.WriteStartObject();
        json.WriteString("list", fault.File.Length == 0 ? null : fault.File);
        Number("line", fault.Line);
        Number("row", fault.Row);
        json.WriteString("column", fault.ColumnName);
        json.WriteString("text", fault.Text);
        json.WriteString("message", message ?? fault.Message);
        json.WriteStartArray("nearest");
        foreach (string word in fault.Nearest)
            json.WriteStringValue(word);
        json.WriteEndArray();
        json.WriteEndObject();

        void Number(string key, int value)
        {
            if (value > 0)
                json.WriteNumber(key, value);
            else
                json.WriteNull(key);
        }
    }
}
