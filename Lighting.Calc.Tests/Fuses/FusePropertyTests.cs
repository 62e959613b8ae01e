using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;

namespace Lighting.Calc.Tests.Fuses;

/// <summary>Laws that hold for every bike of the round bike's shape.</summary>
public class FusePropertyTests
{
    private static readonly string[] s_sizes = [.. WireTable.Of(WireConstruction.MetricCable).Select(w => w.Name)];
    private static readonly double[] s_blades = [.. FuseTable.Of(FuseStyle.Blade).Select(f => f.Rating.Amperes)];

    [Property(MaxTest = 200)]
    public bool The_opening_time_never_rises_with_current(bool glass, PositiveInt low, PositiveInt more)
    {
        FuseStyle style = glass ? FuseStyle.Glass : FuseStyle.Blade;
        OpeningTime less = At(style, low.Get),
            greater = At(style, low.Get + more.Get);
        return Falls(less.Slowest, greater.Slowest)
            && (greater.Fastest is null || Falls(less.Fastest, greater.Fastest))
            && (less.Slowest is null || greater.Slowest is not null);

        static OpeningTime At(FuseStyle style, double percent) =>
            OpeningTime.Calculate(style, ElectricCurrent.FromAmperes(10), ElectricCurrent.FromAmperes(percent / 10));
        static bool Falls(Duration? first, Duration? second) =>
            first is null || second is null || second.Value.Seconds <= first.Value.Seconds * (1 + 1e-12);
    }

    [Property(MaxTest = 200)]
    public bool The_fastest_time_never_lies_above_the_slowest(bool glass, PositiveInt percent)
    {
        OpeningTime time = OpeningTime.Calculate(
            glass ? FuseStyle.Glass : FuseStyle.Blade,
            ElectricCurrent.FromAmperes(10),
            ElectricCurrent.FromAmperes(percent.Get / 10.0)
        );
        return time.Fastest is null || time.Slowest is null || time.Fastest <= time.Slowest;
    }

    [Property(MaxTest = 50)]
    public bool A_longer_run_never_raises_the_prospective_current(byte decimetres, byte more)
    {
        var shorter = Clearing(decimetres / 10.0);
        var longer = Clearing((decimetres + more) / 10.0);
        return shorter.Zip(longer).All(p => p.Second <= p.First + 1e-9);

        static IEnumerable<double> Clearing(double metres) =>
            FuseBike
                .Check(FuseBike.Round(tailMetres: metres))
                .Single()
                .Clearing.Select(c => c.ProspectiveCurrent!.Value.Amperes);
    }

    [Property(MaxTest = 100)]
    public Property The_advice_never_exceeds_what_any_wire_is_rated_for_in_its_bundle() =>
        Prop.ForAll(
            Gen.Elements(s_sizes).ToArbitrary(),
            Gen.Choose(1, 18).ToArbitrary(),
            Gen.Choose(-10, 75).ToArbitrary(),
            (size, bundle, celsius) =>
            {
                Bike bike = FuseBike.Round(tailWire: size);
                bike = bike with { Runs = [.. bike.Runs.Select(r => r with { Bundle = bundle })] };
                FuseAdvice advice = FuseBike
                    .Check(bike, new FuseOptions { WireAmbient = Temperature.FromDegreesCelsius(celsius) })
                    .Single()
                    .Advice;
                double carries = bike
                    .Runs.Where(r => r.Name != "battery lead")
                    .Min(r =>
                        CurrentRating
                            .Calculate(r.Wire, Temperature.FromDegreesCelsius(celsius), bundle)
                            .Current!.Value.Amperes
                    );
                return (advice.Largest is null || advice.Largest.Value.Amperes <= carries)
                    && (advice.Smallest is null || advice.Smallest.Value.Amperes <= carries)
                    && (advice.MaximumRatingForWire is null || advice.MaximumRatingForWire.Value.Amperes <= carries);
            }
        );

    [Property(MaxTest = 50)]
    public Property A_heavier_wire_never_lowers_what_the_wires_are_rated_for() =>
        Prop.ForAll(
            Gen.Choose(0, s_sizes.Length - 2).ToArbitrary(),
            Gen.Choose(0, 60).ToArbitrary(),
            Gen.Choose(1, 60).ToArbitrary(),
            (thin, celsius, metres) =>
                Allows(s_sizes[thin], celsius, metres) <= Allows(s_sizes[thin + 1], celsius, metres)
        );

    [Property(MaxTest = 50)]
    public Property Adding_a_lamp_never_lowers_the_worst_current() =>
        Prop.ForAll(
            Gen.Elements(
                    LampType.Filament,
                    LampType.Halogen,
                    LampType.Led,
                    LampType.LedResistor,
                    LampType.Fixed,
                    LampType.Resistor
                )
                .ToArbitrary(),
            Gen.Choose(1, 60).ToArbitrary(),
            (type, tenths) =>
            {
                Bike bike = FuseBike.Round();
                bike = bike with
                {
                    Lamps = bike.Lamps.Add(
                        FuseBike.Load("spot", LampType.Halogen, 13.2, 4.2, "headlamp +", "headlamp -")
                    ),
                };
                Bike more = bike with
                {
                    Lamps = bike.Lamps.Add(FuseBike.Load("added", type, 13.5, tenths / 10.0, "tail +", "tail -")),
                };
                return FuseBike.Check(more).Single().Steady.WorstCurrent.Amperes
                    >= FuseBike.Check(bike).Single().Steady.WorstCurrent.Amperes - 1e-9;
            }
        );

    [Property(MaxTest = 50)]
    public Property A_rating_between_smallest_and_largest_suits_and_no_other_does() =>
        Prop.ForAll(
            Gen.Elements(s_blades).ToArbitrary(),
            Gen.Elements(s_sizes).ToArbitrary(),
            (rating, size) =>
            {
                FuseSuitability fuse = FuseBike.Check(FuseBike.Round(rating, size)).Single();
                bool within =
                    fuse.Advice.Largest is not null
                    && rating >= fuse.Advice.Smallest!.Value.Amperes
                    && rating <= fuse.Advice.Largest.Value.Amperes;
                return within == (fuse.Verdict == FuseVerdict.Suits);
            }
        );

    private static double Allows(string size, double celsius, double metres) =>
        FuseBike
            .Check(
                FuseBike.Round(tailWire: size, tailMetres: metres),
                new FuseOptions { WireAmbient = Temperature.FromDegreesCelsius(celsius) }
            )
            .Single()
            .Protection.WireCurrent?.Amperes
        ?? 0;
}
