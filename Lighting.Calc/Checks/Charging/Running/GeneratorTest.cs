using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>What is measured on the unplugged generator: resistance and open-circuit voltage, as far as the lists state
/// them.</summary>
internal sealed class GeneratorTest
{
    private static readonly (double Low, double High) s_output = PublishedTable
        .Load("tolerances")
        .Read()
        .Where(r => r.Text("part") == "stator output")
        .Select(r => (1 - r.Number("minus") / 100, 1 + r.Number("plus") / 100))
        .First();

    private GeneratorTest(Bike bike)
    {
        Resistance = bike.GeneratorResistance;
        OpenVoltages =
        [
            .. bike
                .Charging.Where(c => c.OpenVoltage is not null)
                .OrderBy(c => c.Speed.RevolutionsPerMinute)
                .Select(c => new GeneratorVoltage(
                    c.Speed,
                    c.OpenVoltage!.Value,
                    c.OpenVoltage.Value * s_output.Low,
                    c.OpenVoltage.Value * s_output.High
                )),
        ];
    }

    /// <summary>Resistance between each pair of its leads, cold; null where not listed.</summary>
    public ElectricResistance? Resistance { get; }

    /// <summary>AC voltage between each pair of its leads at the listed speeds; empty where not listed.</summary>
    public ImmutableArray<GeneratorVoltage> OpenVoltages { get; }

    internal static GeneratorTest Of(Bike bike) => new(bike);
}
