using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The charging tests of a bike: engine off, at the slowest and at the fastest listed speed, lights off and
/// on.</summary>
/// <remarks>The ranges are those of the bike with battery, regulator and output at the ends of their tolerances
/// (<c>tables/tolerances.csv</c>).</remarks>
internal sealed class ChargingTestSheet(Bike bike, ChargingOptions options)
{
    private static readonly Dictionary<string, (double Low, double High)> s_spreads = PublishedTable
        .Load("tolerances")
        .Read()
        .Where(r =>
            r.Text("part") is "battery volts" or "regulator volts" or "stator output"
            || r.Text("part") == "lamp" && r.Text("kind") == "filament"
        )
        .ToDictionary(r => r.Text("part"), r => (1 - r.Number("minus") / 100, 1 + r.Number("plus") / 100));

    private readonly Variant _listed = new(bike, options);
    private readonly Variant _low = new(With(bike, low: true, weakBattery: true, lightLoad: false), options);
    private readonly Variant _high = new(With(bike, low: false, weakBattery: false, lightLoad: true), options);

    // The most flows out of a battery with little output, much voltage and much load, and into it with much output,
    // little voltage and little load.
    private readonly Variant _out = new(With(bike, low: true, weakBattery: false, lightLoad: false), options);
    private readonly Variant _in = new(With(bike, low: false, weakBattery: true, lightLoad: true), options);

    public ImmutableArray<ChargingTest> Of(IEnumerable<EngineSeries> series) =>
        [
            .. series
                .Where(s => s.Kind != EngineSeriesKind.NightBraking)
                .SelectMany(s =>
                    new RotationalSpeed?[] { null, s.Points[0].Bus!.Speed, s.Points[^1].Bus!.Speed }
                        .Distinct()
                        .Select(n => Test(n, s.Setting))
                ),
        ];

    private ChargingTest Test(RotationalSpeed? speed, Setting setting)
    {
        (double volts, double amperes) = _listed.At(speed, setting);
        double low = _low.At(speed, setting).Volts,
            high = _high.At(speed, setting).Volts,
            leaves = _out.At(speed, setting).Amperes,
            enters = _in.At(speed, setting).Amperes;
        return new ChargingTest(
            Speed: speed,
            Setting: setting,
            Voltage: ElectricPotential.FromVolts(volts),
            LowestVoltage: ElectricPotential.FromVolts(Math.Min(low, volts)),
            HighestVoltage: ElectricPotential.FromVolts(Math.Max(high, volts)),
            Current: ElectricCurrent.FromAmperes(amperes),
            LowestCurrent: ElectricCurrent.FromAmperes(Math.Min(amperes, Math.Min(leaves, enters))),
            HighestCurrent: ElectricCurrent.FromAmperes(Math.Max(amperes, Math.Max(leaves, enters)))
        );
    }

    private static Bike With(Bike bike, bool low, bool weakBattery, bool lightLoad)
    {
        double output = End("stator output", low),
            regulator = End("regulator volts", low),
            battery = End("battery volts", weakBattery),
            load = End("lamp", lightLoad);
        return bike with
        {
            Charging = [.. bike.Charging.Select(c => c with { Current = c.Current * output })],
            ChargingVoltage = bike.ChargingVoltage * regulator,
            ZenerVoltage = bike.ZenerVoltage is { } zener ? zener * regulator : null,
            BatteryVoltage = bike.BatteryVoltage * battery,
            Lamps =
            [
                .. bike.Lamps.Select(l =>
                    l with
                    {
                        Specification = LampSpecification.FromCurrent(
                            l.Specification.Type,
                            l.Specification.ReferenceVoltage,
                            l.Specification.ReferenceCurrent * load,
                            l.Specification.MinimumVoltage
                        ),
                    }
                ),
            ],
        };

        static double End(string part, bool low) => low ? s_spreads[part].Low : s_spreads[part].High;
    }

    /// <summary>The bike at one end of the tolerances.</summary>
    private sealed class Variant
    {
        private readonly RunningEngine _engine;
        private readonly HarnessSolver _battery;

        public Variant(Bike bike, ChargingOptions options)
        {
            // A tolerance may lead beyond what a list may state.
            HarnessNetwork network = HarnessNetwork.OfAnyValues(bike);
            _engine = new RunningEngine(bike, network.AtGenerator.CreateSolver(), options);
            _battery = network.CreateSolver();
            _battery.SetSupply(_engine.BatteryVoltage);
        }

        public (double Volts, double Amperes) At(RotationalSpeed? speed, Setting setting)
        {
            if (speed is { } running && _engine.At(running, setting) is { } point)
                return (point.Bus!.BatteryVoltage.Volts, point.Bus.BatteryCurrent.Amperes);
            OperatingPoint off = _battery.Solve(setting);
            return (off.SupplyVoltage.Volts - off.BatteryDrop.Volts, -off.TotalCurrent.Amperes);
        }
    }
}
