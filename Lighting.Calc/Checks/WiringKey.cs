using System.Globalization;
using System.Text;

namespace Lighting.Calc;

/// <summary>How a bike is wired, as its lists name it, in one text: parts, points, switch positions and conditions,
/// none of their values.</summary>
/// <remarks>Two bikes of equal keys have the same circuit, the same settings, and the same things to be said of their
/// wiring.</remarks>
internal static class WiringKey
{
    /// <param name="bike">The bike.</param>
    /// <param name="when">The settings that are looked at.</param>
    public static string Of(Bike bike, Condition when)
    {
        var key = new StringBuilder(4096);
        Add($"{bike.Earth} {bike.Lighting}", when.ToString(), bike.GeneratorPoint);
        foreach (Run run in bike.Runs)
            Add(run.Name, run.From, run.To);
        End();
        foreach (SwitchContact contact in bike.Switches)
        {
            Add(contact.HasOff ? contact.Switch : null, contact.IsRelay ? "relay" : null);
            Add(contact.Switch, contact.From, contact.To);
            Add(contact.ClosedIn.AsSpan());
            End();
        }

        End();
        foreach (Fuse fuse in bike.Fuses)
            Add(fuse.Name, fuse.From, fuse.To);
        End();
        foreach (FittedLamp lamp in bike.Lamps)
            Add(lamp.Lamp, lamp.Feed, lamp.Return, lamp.LitWhen.ToString(), lamp.Coil is null ? null : "coil");
        End();
        foreach (ChargingPoint point in bike.Charging)
            Add(point.When.ToString());
        End();
        foreach (RideStretch stretch in bike.Ride)
            Add(stretch.When.ToString());
        return key.ToString();

        // Each text behind its length, so that none is taken for a part of the next.
        void Add(params ReadOnlySpan<string?> texts)
        {
            foreach (string? text in texts)
                key.Append(CultureInfo.InvariantCulture, $"{text?.Length ?? -1}:").Append(text);
        }

        void End() => key.Append(';');
    }
}
