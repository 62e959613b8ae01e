using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Lighting.Calc;

/// <summary>JSON as the library and the command print it: indented, line feeds, letters of other alphabets as they
/// are.</summary>
internal static class JsonText
{
    private static readonly JsonWriterOptions s_options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>What is written to a writer, as text.</summary>
    public static string Of(Action<Utf8JsonWriter> write)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, s_options))
            write(json);
        return Encoding.UTF8.GetString(buffer.GetBuffer(), 0, (int)buffer.Length);
    }
}
