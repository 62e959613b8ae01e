using System.Text;
using System.Text.Json;

namespace Lighting.Calc.Tests.Cli;

/// <summary>The schemas of all JSON, made from what every command gives, and the keys that the manual lists.</summary>
public class JsonSchemaTests(GoldenOutputs outputs) : IClassFixture<GoldenOutputs>
{
    private const string Regenerate =
        "Where that is meant: LIGHTING_CALC_WRITE_GOLDEN=1 dotnet test -p:LongTests=true --filter JsonSchemaTests, "
        + "then look at what changed.";

    private static readonly string s_folder = Path.Combine(CliProcess.Root, "Lighting.Calc", "schemas");
    private static readonly bool s_writes = Environment.GetEnvironmentVariable("LIGHTING_CALC_WRITE_GOLDEN") == "1";

    // Bikes that others drew, and lists of which most are missing: what may be unknown, is.
    private static IEnumerable<string> Others =>
        from bike in Directory
            .GetDirectories(Path.Combine(CliProcess.Root, "Lighting.Calc.Tests", "ForeignBikes"))
            .Select(b => Path.GetFileName(b))
            .Order(StringComparer.Ordinal)
            .Select(b => $"Lighting.Calc.Tests/ForeignBikes/{b}")
            .Append("shared/bulb-list.csv")
        from command in new[] { "check", "load", "fuse", "drop", "charging", "readings", "diagram" }
        where !(bike.EndsWith(".csv", StringComparison.Ordinal) && command == "charging")
        select $"{command} {bike} --format json";

    private const string Relay = "drop shared/bikes/valley-twin --relay \"headlamp high\" --format json";

    private static IEnumerable<string> Quick =>
        GoldenLines.In("json", slow: false).Select(l => l.Line).Concat(Others).Append(Relay);

    [Fact]
    [Trait("time", "long")]
    public async Task Schemas_and_the_keys_of_the_manual_are_those_of_the_outputs()
    {
        var schemas = new SortedDictionary<string, JsonSchema>(StringComparer.Ordinal);
        foreach (string line in Quick.Concat(GoldenLines.In("json", slow: true).Select(l => l.Line)))
            foreach (JsonElement root in GoldenJson.Roots((await outputs.Of(line)).Output))
            {
                string name = NameOf(root);
                if (!schemas.TryGetValue(name, out JsonSchema? schema))
                    schemas.Add(name, schema = new JsonSchema());
                schema.Add(root);
            }

        foreach ((string name, JsonSchema schema) in schemas)
            Compare(
                Path.Combine(s_folder, $"{name}.json"),
                schema.Text($"JSON of lighting-calc: {name.Replace('-', ' ')}")
            );
        Assert.Equal(
            schemas.Keys,
            Directory.GetFiles(s_folder).Select(Path.GetFileNameWithoutExtension).Order(StringComparer.Ordinal)
        );
        CompareManual(schemas);
    }

    [Fact]
    public async Task Every_quick_output_is_as_its_schema_says()
    {
        var problems = new SortedSet<string>(StringComparer.Ordinal);
        foreach (string line in Quick.Where(l => !l.StartsWith("wire ", StringComparison.Ordinal)))
            foreach (JsonElement root in GoldenJson.Roots((await outputs.Of(line)).Output))
                foreach (string problem in JsonSchema.Problems(SchemaOf(NameOf(root)), root))
                    problems.Add($"{line.Split(' ')[0]}: {problem}");
        Assert.Empty(problems);
    }

    [Theory]
    [InlineData("""{"schema": 1}""", "missing")]
    [InlineData("""{"schema": "1"}""", "is string")]
    [InlineData("""{"schema": 1, "shcema": 1}""", "is not known")]
    public void What_is_not_as_a_schema_says_is_found(string json, string problem) =>
        Assert.Contains(
            JsonSchema.Problems(SchemaOf("check"), JsonDocument.Parse(json).RootElement),
            p => p.Contains(problem, StringComparison.Ordinal)
        );

    // Names are the file's; spaces are not.
    private static string NameOf(JsonElement root) => root.GetProperty("result").GetString()!.Replace(' ', '-');

    private static JsonElement SchemaOf(string name) =>
        JsonDocument.Parse(File.ReadAllText(Path.Combine(s_folder, $"{name}.json"))).RootElement;

    private static void CompareManual(SortedDictionary<string, JsonSchema> schemas)
    {
        const string start = "<!-- keys: written by JsonSchemaTests -->\n",
            end = "<!-- end of keys -->";
        string path = Path.Combine(CliProcess.Root, "Lighting.Calc", "MANUAL.md"),
            manual = File.ReadAllText(path);
        int from = manual.IndexOf(start, StringComparison.Ordinal) + start.Length,
            to = manual.IndexOf(end, StringComparison.Ordinal);
        Assert.True(from > start.Length && to > from, "The manual has no place for the keys.");
        var keys = new StringBuilder("\n");
        foreach ((string name, JsonSchema schema) in schemas)
            keys.Append($"- **{name}**: {string.Join(", ", schema.Paths().Select(p => $"`{p}`"))}\n");
        Compare(path, $"{manual[..from]}{keys}\n{manual[to..]}");
    }

    private static void Compare(string path, string text)
    {
        if (s_writes)
        {
            Directory.CreateDirectory(s_folder);
            File.WriteAllText(path, text);
        }

        Assert.True(
            File.Exists(path) && File.ReadAllText(path) == text,
            $"{Path.GetFileName(path)} differs. {Regenerate}"
        );
    }
}
