using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Lighting.Calc.Tests.Cli;

/// <summary>The form of some JSON values, taken from samples: which types they have, which members always, which at
/// times.</summary>
internal sealed class JsonSchema
{
    private readonly SortedSet<string> _types = new(StringComparer.Ordinal);
    private readonly Dictionary<string, JsonSchema> _members = [];
    private readonly List<string> _order = [];
    private JsonSchema? _items;
    private bool _namesSwitches;
    private int _objects;
    private int _seen;

    /// <summary>Adds a sample.</summary>
    public void Add(JsonElement sample, string key = "")
    {
        _seen++;
        _types.Add(TypeOf(sample));
        if (sample.ValueKind == JsonValueKind.Array)
        {
            _items ??= new JsonSchema();
            foreach (JsonElement item in sample.EnumerateArray())
                _items.Add(item, key);
        }
        else if (sample.ValueKind == JsonValueKind.Object)
        {
            // The members of a setting are the bike's own switches.
            _namesSwitches |= key.EndsWith("etting", StringComparison.Ordinal);
            _objects++;
            foreach (JsonProperty member in sample.EnumerateObject())
                MemberOf(member.Name).Add(member.Value, member.Name);
        }
    }

    /// <summary>The schema as JSON Schema 2020-12.</summary>
    public string Text(string title)
    {
        using var buffer = new MemoryStream();
        var options = new JsonWriterOptions
        {
            Indented = true,
            NewLine = "\n",
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        };
        using (var json = new Utf8JsonWriter(buffer, options))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://json-schema.org/draft/2020-12/schema");
            json.WriteString("title", title);
            Write(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }

    /// <summary>The members with all that is within them, such as <c>fuses[].ratingA</c>, in their order.</summary>
    public IEnumerable<string> Paths(string before = "")
    {
        if (_items is { } items)
            foreach (string path in items.Paths(before + "[]"))
                yield return path;
        if (_namesSwitches)
            yield break;
        foreach (string name in _order)
        {
            string path = before.Length == 0 ? name : $"{before}.{name}";
            yield return path;
            foreach (string inner in _members[name].Paths(path))
                yield return inner;
        }
    }

    /// <summary>Whatever a value has that a schema does not allow, by its path; empty where it is as the schema
    /// says.</summary>
    public static IEnumerable<string> Problems(JsonElement schema, JsonElement value, string path = "")
    {
        if (schema.TryGetProperty("type", out JsonElement type))
        {
            string[] types =
                type.ValueKind == JsonValueKind.Array
                    ? [.. type.EnumerateArray().Select(t => t.GetString()!)]
                    : [type.GetString()!];
            if (!types.Contains(TypeOf(value)))
                yield return $"{path} is {TypeOf(value)}";
        }

        if (schema.TryGetProperty("const", out JsonElement only) && only.GetString() != value.GetString())
            yield return $"{path} is not {only}";
        if (value.ValueKind == JsonValueKind.Object)
        {
            if (schema.TryGetProperty("required", out JsonElement required))
                foreach (JsonElement name in required.EnumerateArray())
                    if (!value.TryGetProperty(name.GetString()!, out _))
                        yield return $"{path}.{name} is missing";
            foreach (JsonProperty member in value.EnumerateObject())
                if (
                    schema.TryGetProperty("properties", out JsonElement members)
                    && members.TryGetProperty(member.Name, out JsonElement known)
                )
                    foreach (string problem in Problems(known, member.Value, $"{path}.{member.Name}"))
                        yield return problem;
                else if (schema.TryGetProperty("additionalProperties", out JsonElement other))
                    if (other.ValueKind == JsonValueKind.False)
                        yield return $"{path}.{member.Name} is not known";
                    else
                        foreach (string problem in Problems(other, member.Value, $"{path}.{member.Name}"))
                            yield return problem;
        }

        if (value.ValueKind == JsonValueKind.Array && schema.TryGetProperty("items", out JsonElement items))
            foreach (JsonElement item in value.EnumerateArray())
                foreach (string problem in Problems(items, item, $"{path}[]"))
                    yield return problem;
    }

    private static string TypeOf(JsonElement value) =>
        value.ValueKind switch
        {
            JsonValueKind.Object => "object",
            JsonValueKind.Array => "array",
            JsonValueKind.String => "string",
            JsonValueKind.Number => "number",
            JsonValueKind.Null => "null",
            _ => "boolean",
        };

    private JsonSchema MemberOf(string name)
    {
        if (!_members.TryGetValue(name, out JsonSchema? member))
        {
            _members.Add(name, member = new JsonSchema());
            _order.Add(name);
        }

        return member;
    }

    private void Write(Utf8JsonWriter json)
    {
        // A figure is null where it is unknown, seen among the samples or not.
        string[] types = [.. _types.Contains("number") ? _types.Append("null").Distinct() : _types];
        if (types.Length == 1)
        {
            json.WriteString("type", types[0]);
        }
        else if (types.Length > 1)
        {
            json.WriteStartArray("type");
            foreach (string type in types)
                json.WriteStringValue(type);
            json.WriteEndArray();
        }

        if (_items is { _seen: > 0 })
        {
            json.WriteStartObject("items");
            _items.Write(json);
            json.WriteEndObject();
        }

        if (_objects == 0)
            return;
        if (_namesSwitches)
        {
            json.WriteStartObject("additionalProperties");
            json.WriteString("type", "string");
            json.WriteEndObject();
            return;
        }

        json.WriteStartObject("properties");
        foreach (string name in _order)
        {
            json.WriteStartObject(name);
            _members[name].Write(json);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteStartArray("required");
        foreach (string name in _order.Where(n => _members[n]._seen == _objects))
            json.WriteStringValue(name);
        json.WriteEndArray();
        json.WriteBoolean("additionalProperties", false);
    }
}
