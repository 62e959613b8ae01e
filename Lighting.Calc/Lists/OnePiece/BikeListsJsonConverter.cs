using System.Text.Json;
using System.Text.Json.Serialization;

namespace Lighting.Calc;

/// <summary>Lets <c>System.Text.Json</c> read and write a bike's lists in the form of
/// <see cref="ListSource.FromJson(string)"/>.</summary>
public sealed class BikeListsJsonConverter : JsonConverter<BikeLists>
{
    /// <summary>Reads the lists.</summary>
    /// <param name="reader">Stands at the start of the object.</param>
    /// <param name="typeToConvert">Not used.</param>
    /// <param name="options">Not used: names and texts are those of the lists.</param>
    /// <exception cref="JsonException">The lists have faults: the message has each on a line, and the inner exception,
    /// a <see cref="ListException"/>, holds them.</exception>
    public override BikeLists Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        ListResult<BikeLists> read = BikeLists.Read(JsonLists.Of(JsonElement.ParseValue(ref reader), JsonLists.Label));
        try
        {
            return read.Value;
        }
        catch (ListException faults)
        {
            throw new JsonException(faults.Message, faults);
        }
    }

    /// <summary>Writes the lists.</summary>
    /// <param name="writer">Receives one object.</param>
    /// <param name="value">The lists.</param>
    /// <param name="options">Not used: names and texts are those of the lists.</param>
    /// <exception cref="ArgumentNullException">There is nowhere to write, or nothing: null.</exception>
    public override void Write(Utf8JsonWriter writer, BikeLists value, JsonSerializerOptions options) =>
        BikeListsWriter.WriteJson(value, writer);
}
