using System.Text.Json;

namespace Lighting.Calc;

/// <summary>The lists of a bike as one JSON object: its keys are the names of the lists, without <c>.csv</c>.</summary>
internal static class JsonLists
{
    private const int Bytes = 16 * 1024 * 1024;
    private const string SchemaKey = "$schema";

    /// <summary>The most bytes that are read of it: one more than it may have.</summary>
    public const int MostBytes = Bytes + 1;

    /// <summary>Name of the JSON in messages where it has no file.</summary>
    public const string Label = "JSON";

    /// <summary>The key of a list: its name without <c>.csv</c>.</summary>
    public static string KeyOf(ListSchema schema) => schema.File[..^".csv".Length];

    /// <summary>The lists that a text holds, or what is wrong with it as a whole.</summary>
    public static ListSource Of(byte[] utf8, string label)
    {
        var log = new FaultLog();
        if (utf8.Length > Bytes)
            log.Fault(
                new ListFault
                {
                    File = label,
                    Problem = $"is larger than {Bytes / 1024 / 1024} MiB, the limit of a bike",
                }
            );
        if (log.HasFaults || ListText.Check(utf8, label, log) is not { } text)
            return ListSource.Refused(log);
        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            return Of(document.RootElement, label);
        }
        catch (JsonException wrong)
        {
            log.Fault(
                new ListFault
                {
                    File = label,
                    Line = (int)(wrong.LineNumber ?? 0) + 1,
                    Problem = $"is not JSON from byte {(wrong.BytePositionInLine ?? 0) + 1} of this line on",
                    Expected =
                        "expected an object with the lists of a bike, such as {\"lamps\": [{\"lamp\": \"tail\", …}]}",
                }
            );
            return ListSource.Refused(log);
        }
    }

    /// <summary>The lists that an object holds.</summary>
    public static ListSource Of(JsonElement root, string label)
    {
        var log = new FaultLog();
        if (root.ValueKind != JsonValueKind.Object)
        {
            log.Fault(
                new ListFault
                {
                    File = label,
                    Problem = "is not an object",
                    Expected = $"the lists are {Choice.Of(ListSchema.All.Select(KeyOf))}",
                }
            );
            return ListSource.Refused(log);
        }

        ListSource source = ListSource.OfJson;
        foreach (JsonProperty property in root.EnumerateObject())
        {
            if (property.NameEquals(SchemaKey))
                continue;
            if (ListSchema.All.FirstOrDefault(s => Name.Equal(KeyOf(s), property.Name)) is { } schema)
                source = source.With(new JsonListFile(schema, KeyOf(schema), property.Value.Clone()));
            else
                log.Fault(
                    new ListFault
                    {
                        File = label,
                        Text = property.Name,
                        Problem = "is not a list of a bike",
                        Expected = $"the lists are {string.Join(", ", ListSchema.All.Select(KeyOf))}",
                        Nearest = SpellingSuggestions.Of(property.Name, ListSchema.All.Select(KeyOf)),
                    }
                );
        }

        return source.WithFaults(log);
    }
}
