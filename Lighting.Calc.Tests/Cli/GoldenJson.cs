using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Lighting.Calc.Tests.Cli;

/// <summary>JSON without what may differ between processors and bikes.</summary>
internal static class GoldenJson
{
    /// <summary>The same with every number rounded to nine significant digits and nine decimals: another processor's
    /// last bits do not count.</summary>
    public static string Rounded(string json) => string.Join('\n', Roots(json).Select(r => Rounded(r)!.ToJsonString()));

    /// <summary>The values one after the other: one, or one a bike.</summary>
    public static IEnumerable<JsonElement> Roots(string json)
    {
        var reader = new Utf8JsonReader(
            Encoding.UTF8.GetBytes(json),
            new JsonReaderOptions { AllowMultipleValues = true }
        );
        var roots = new List<JsonElement>();
        while (json.Length > 0 && reader.Read())
            roots.Add(JsonElement.ParseValue(ref reader));
        return roots;
    }

    /// <summary>Adds the paths of all keys, such as <c>lamps[].voltageV</c>, after a beginning that ends with a space;
    /// the names of switches are the bike's own and stand as <c>*</c>.</summary>
    public static void AddPaths(JsonElement element, string path, ISet<string> paths)
    {
        if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (JsonElement item in element.EnumerateArray())
                AddPaths(item, $"{path}[]", paths);
        }
        else if (element.ValueKind == JsonValueKind.Object)
        {
            bool namesSwitches = path.EndsWith("etting", StringComparison.Ordinal);
            foreach (JsonProperty property in element.EnumerateObject())
            {
                string inner = $"{path}{(path.EndsWith(' ') ? "" : ".")}{(namesSwitches ? "*" : property.Name)}";
                paths.Add(inner);
                AddPaths(property.Value, inner, paths);
            }
        }
    }

    private static double Rounded(double value) =>
        Math.Round(double.Parse(value.ToString("G9", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), 9);

    private static JsonNode? Rounded(JsonElement element) =>
        element.ValueKind switch
        {
            JsonValueKind.Object => new JsonObject(
                element.EnumerateObject().Select(p => KeyValuePair.Create(p.Name, Rounded(p.Value)))
            ),
            JsonValueKind.Array => new JsonArray([.. element.EnumerateArray().Select(Rounded)]),
            JsonValueKind.Number => JsonValue.Create(Rounded(element.GetDouble())),
            _ => JsonNode.Parse(element.GetRawText()),
        };
}
