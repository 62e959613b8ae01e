namespace Lighting.Calc;

/// <summary>The elements of a circuit whose generator joins the harness apart from the battery.</summary>
/// <param name="ToBattery">The conductor from the source to the battery's live terminal: merged, engine off.</param>
/// <param name="ToJoint">The conductor from the source to where the generator joins: merged, engine running.</param>
/// <param name="Battery">The battery as a load, engine running.</param>
internal sealed record ApartBattery(int ToBattery, int ToJoint, int Battery);
