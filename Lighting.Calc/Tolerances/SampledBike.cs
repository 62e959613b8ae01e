using UnitsNet;

namespace Lighting.Calc;

/// <summary>The bike that one set of values makes, as a bike of its own: what every other check of the library can judge.</summary>
internal static class SampledBike
{
    public static Bike Of(UncertainBike uncertain, double[] values)
    {
        Bike bike = uncertain.Bike;
        return bike with
        {
            Lamps = [.. bike.Lamps.Select((l, i) => l with { Specification = Scaled(l.Specification, uncertain.LampCurrent(values, i)) })],
            Runs =
            [
                .. bike.Runs.Select((r, i) => r with
                {
                    Wire = new WireSize(r.Wire.Name, r.Wire.Construction, r.Wire.CopperArea, r.Wire.OhmsPerMetreAt20 * uncertain.WireResistance(values, i)),
                    JointResistance = r.JointResistance * uncertain.JointResistance(values, i),
                }),
            ],
            Switches = [.. bike.Switches.Select((s, i) => s with { Resistance = s.Resistance * uncertain.ContactResistance(values, i) })],
            Fuses = [.. bike.Fuses.Select((f, i) => f with { Resistance = FuseTable.ResistanceOf(f) * uncertain.FuseResistance(values, i) })],
            Charging = [.. bike.Charging.Select(c => c with { Current = c.Current * uncertain.StatorOutput(values) })],
            WireTemperature = Temperature.FromDegreesCelsius(uncertain.WireCelsius(values)),
            BatteryResistance = bike.BatteryResistance * uncertain.BatteryResistance(values),
            BatteryVoltage = bike.BatteryVoltage * uncertain.BatteryVolts(values),
            ChargingVoltage = bike.ChargingVoltage * uncertain.RegulatorVolts(values),
        };
    }

    private static LampSpecification Scaled(LampSpecification lamp, double factor) =>
        LampSpecification.FromCurrent(lamp.Type, lamp.ReferenceVoltage, lamp.ReferenceCurrent * factor, lamp.MinimumVoltage) with
        {
            Code = lamp.Code,
            ReferenceFlux = lamp.ReferenceFlux,
            MaximumVoltage = lamp.MaximumVoltage,
        };
}
