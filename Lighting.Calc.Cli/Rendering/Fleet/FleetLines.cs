using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using CsvHelper;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>Writes many bikes a line each.</summary>
internal abstract class FleetLines : IDisposable
{
    /// <summary>CSV under a header.</summary>
    public static FleetLines Csv(TextWriter output) => new CsvLines(output);

    /// <summary>JSON lines: an object on each line, with the keys of the CSV header.</summary>
    public static FleetLines Json(TextWriter output) => new JsonLines(output);

    public abstract void Write(FleetRow row);

    public virtual void Dispose() { }

    private sealed class CsvLines : FleetLines
    {
        private readonly CsvWriter _csv;

        public CsvLines(TextWriter output)
        {
            _csv = CsvRenderer.Open(output);
            _csv.WriteHeader([.. FleetColumns.All.Keys]);
            _csv.Flush();
        }

        public override void Write(FleetRow row)
        {
            CsvRenderer.Write(_csv, FleetColumns.All.Row(row));
            _csv.Flush();
        }

        public override void Dispose() => _csv.Dispose();
    }

    private sealed class JsonLines(TextWriter output) : FleetLines
    {
        private static readonly JsonWriterOptions s_options = new()
        {
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        };
        private readonly MemoryStream _line = new();

        public override void Write(FleetRow row)
        {
            _line.SetLength(0);
            using (var json = new Utf8JsonWriter(_line, s_options))
            {
                json.WriteStartObject();
                json.WriteNumber("schema", JsonRenderer.Schema);
                json.WriteString("result", "check of many");
                FleetColumns.All.Write(json, row);
                json.WriteEndObject();
            }

            output.Write(
                VisibleText.Of(Encoding.UTF8.GetString(_line.GetBuffer(), 0, (int)_line.Length), keepLines: true)
            );
            output.Write('\n');
        }
    }
}
