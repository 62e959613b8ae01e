using UnitsNet;

namespace Lighting.Calc.Tests.Conductors;

public class CurrentRatingTests
{
    [Fact]
    public void Every_listed_size_has_a_rating_or_says_that_none_is_published()
    {
        foreach (WireSize wire in WireTable.All)
        {
            CurrentRating rating = At(wire);
            Assert.Equal(rating.Current is null, rating.Basis == CurrentRatingBasis.NoPublishedRating);
            Assert.Equal(wire.CopperArea.SquareMillimeters < 0.35 - 1e-9, rating.Current is null);
            Assert.NotEmpty(rating.Explanation);
            Assert.Equal(rating.Current is null, rating.Source.Length == 0);
        }
    }

    [Theory]
    [InlineData(17, "18 AWG", 15)]
    [InlineData(15, "16 AWG", 20)]
    [InlineData(19, "0.5 mm2", 12)]
    [InlineData(20, "0.5 mm2", 12)]
    [InlineData(21, "0.35 mm2", 9)]
    [InlineData(5, "6 AWG", 100)]
    public void A_gauge_without_a_rating_takes_the_next_thinner_size_and_says_so(
        int gauge,
        string thinner,
        double amperes
    )
    {
        CurrentRating rating = At(AmericanWireGauge.Stranded(gauge));
        Assert.Equal(CurrentRatingBasis.SmallerSize, rating.Basis);
        Assert.Equal(amperes, rating.Current!.Value.Amperes, 1e-9);
        Assert.StartsWith(
            $"{thinner}, the next smaller size with a published rating,",
            rating.Explanation,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(22)]
    [InlineData(30)]
    public void A_gauge_thinner_than_every_published_one_has_none(int gauge)
    {
        CurrentRating rating = At(AmericanWireGauge.Solid(gauge));
        Assert.Equal(CurrentRatingBasis.NoPublishedRating, rating.Basis);
        Assert.Null(rating.Current);
        Assert.Null(rating.PublishedCurrent);
    }

    [Theory]
    [InlineData(69, false)]
    [InlineData(70, true)]
    [InlineData(71, true)]
    public void Air_as_hot_as_the_insulation_may_become_leaves_nothing(double celsius, bool isTooHot)
    {
        CurrentRating rating = At(Wire("1 mm2"), celsius);
        Assert.Equal(isTooHot ? CurrentRatingBasis.AmbientTooHot : CurrentRatingBasis.Published, rating.Basis);
        Assert.Equal(isTooHot, rating.Current!.Value.Amperes == 0);
    }

    // By hand: 19 A × sqrt((70 − 50)/(70 − 30)) × 0.70 for three together = 19 × 0.70711 × 0.70 = 9.405 A.
    [Fact]
    public void Ambient_and_bundle_multiply() =>
        Assert.Equal(9.405, At(Wire("1 mm2"), 50, 3).Current!.Value.Amperes, 0.001);

    [Theory]
    [InlineData(10, 0.45)]
    [InlineData(13, 0.385)]
    [InlineData(15, 0.385)]
    [InlineData(18, 0.35)]
    public void Between_printed_bundles_the_larger_counts(int wires, double factor) =>
        Assert.Equal(factor, BundleDerating.AllLoaded(wires)!.Value.DecimalFractions, 1e-9);

    [Fact]
    public void A_bundle_larger_than_any_printed_one_has_no_rating()
    {
        CurrentRating rating = At(Wire("1 mm2"), 30, 19);
        Assert.Equal(CurrentRatingBasis.NoPublishedBundleFactor, rating.Basis);
        Assert.Null(rating.Current);
        Assert.Contains("19 loaded wires in a bundle (maximum 18)", rating.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void Values_outside_their_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => At(Wire("1 mm2"), -41));
        Assert.Throws<ArgumentOutOfRangeException>(() => At(Wire("1 mm2"), 30, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BundleDerating.PartlyLoaded(0, Ratio.FromPercent(50)));
        Assert.Null(BundleDerating.PartlyLoaded(19, Ratio.FromPercent(50)));
        Assert.Null(BundleDerating.PartlyLoaded(4, Ratio.FromPercent(19)));
    }

    [Fact]
    public void A_thicker_wire_of_the_same_kind_never_carries_less()
    {
        foreach (WireConstruction construction in Enum.GetValues<WireConstruction>())
            for (double celsius = -40; celsius <= 80; celsius += 10)
            {
                double[] carries = [.. WireTable.Of(construction).Select(w => At(w, celsius).Current?.Amperes ?? 0)];
                Assert.Equal(carries.Order(), carries);
            }
    }

    private static CurrentRating At(WireSize wire, double celsius = 30, int bundle = 1) =>
        CurrentRating.Calculate(wire, Temperature.FromDegreesCelsius(celsius), bundle);

    private static WireSize Wire(string name) =>
        WireTable.TryFind(name, out WireSize? wire) ? wire! : throw new ArgumentException(name);
}
