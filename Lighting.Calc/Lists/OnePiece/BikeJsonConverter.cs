using System.Text.Json;
using System.Text.Json.Serialization;

namespace Lighting.Calc;

/// <summary>Refuses to serialise a bike by its properties, which would read back as another bike, and names the call
/// that does it.</summary>
public sealed class BikeJsonConverter : JsonConverter<Bike>
{
    /// <summary>Refuses.</summary>
    /// <param name="reader">Not read.</param>
    /// <param name="typeToConvert">Not used.</param>
    /// <param name="options">Not used.</param>
    /// <exception cref="NotSupportedException">Always; the message names the call that reads a bike.</exception>
    public override Bike Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException(
            "A Bike is not deserialised by its properties. Read its lists: "
                + "BikeLists.Read(ListSource.FromJson(text)), or deserialise BikeLists."
        );

    /// <summary>Refuses.</summary>
    /// <param name="writer">Not written to.</param>
    /// <param name="value">The bike.</param>
    /// <param name="options">Not used.</param>
    /// <exception cref="NotSupportedException">Always; the message names the call that writes a bike.</exception>
    public override void Write(Utf8JsonWriter writer, Bike value, JsonSerializerOptions options) =>
        throw new NotSupportedException(
            "A Bike is not serialised by its properties. Write its lists: BikeListsWriter.WriteJson(new BikeLists "
                + "{ Bike = bike }), or serialise BikeLists."
        );
}
