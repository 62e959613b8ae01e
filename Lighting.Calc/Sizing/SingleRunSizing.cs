using System.Collections.Immutable;
using UnitsNet;
using static Lighting.Calc.SizingReporter;

namespace Lighting.Calc;

/// <summary>The thinnest standard size for one run, from its current and length alone.</summary>
/// <remarks>Ohm's law: V = I · (R of the wire there and back + R of the rest), as <see cref="VoltageDrop"/>; rating by
/// <see cref="CurrentRating"/>.</remarks>
public static class SingleRunSizing
{
    private const double Tolerance = 1e-9;

    /// <summary>Chooses the size.</summary>
    /// <param name="options">The run.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is outside its range.</exception>
    public static SingleRunResult Size(SingleRunOptions options)
    {
        Check(options);
        ImmutableArray<SingleRunCandidate> candidates =
        [
            .. SizingProblem.SizesOf(options.Family, options.IncludeOddGauges).Select(w => Try(options, w)),
        ];
        SingleRunCandidate? chosen = candidates.FirstOrDefault(c => c.Holds);
        SingleRunCandidate? thinner =
            chosen is null ? null
            : candidates.IndexOf(chosen) is var at and > 0 ? candidates[at - 1]
            : null;
        return new SingleRunResult
        {
            Candidates = candidates,
            Chosen = chosen?.Wire,
            Limit =
                chosen is null ? null
                : thinner is null ? SizingConstraint.SmallestListed
                : LimitOf(thinner),
            Explanation =
                chosen is null
                    ? $"no listed size does it: even {candidates[^1].Wire}, the thickest listed, "
                        + $"{Against(options, candidates[^1])}"
                : thinner is null ? $"{chosen.Wire} is the thinnest listed"
                : $"{chosen.Wire}: the next thinner, {thinner.Wire}, {Against(options, thinner)}",
        };
    }

    private static SingleRunCandidate Try(SingleRunOptions options, WireSize wire)
    {
        Length length = options.OneWay ? options.Length : options.Length * 2;
        ElectricPotential drop =
            VoltageDrop.Calculate(options.Current, length, wire, options.WireTemperature)
            + options.Current * options.OtherResistance;
        var rating = CurrentRating.Calculate(wire, options.Ambient, options.Bundle);
        double share = drop.Volts / options.Voltage.Volts;
        bool holdsDrop = share <= options.AllowedDrop.DecimalFractions + Tolerance;
        bool? holdsCurrent = rating.Current is { } a ? a.Amperes >= options.Current.Amperes - Tolerance : null;
        bool? holdsFuse =
            options.Fuse is { } fuse && rating.Current is { } b ? b.Amperes >= fuse.Amperes - Tolerance : null;
        bool strong = wire.CopperArea.SquareMillimeters >= options.MinimumArea.SquareMillimeters - Tolerance;
        return new SingleRunCandidate(
            Wire: wire,
            Drop: drop,
            DropShare: Ratio.FromDecimalFractions(share),
            Rating: rating,
            MeetsDrop: holdsDrop,
            MeetsAmpacity: holdsCurrent,
            MeetsFuse: holdsFuse,
            IsStrongEnough: strong,
            Holds: holdsDrop && holdsCurrent == true && (options.Fuse is null || holdsFuse == true) && strong
        );
    }

    private static SizingConstraint LimitOf(SingleRunCandidate thinner) =>
        !thinner.IsStrongEnough ? SizingConstraint.Mechanical
        : thinner.MeetsFuse == false ? SizingConstraint.Fuse
        : thinner.MeetsAmpacity != true ? SizingConstraint.Heat
        : SizingConstraint.Drop;

    private static string Against(SingleRunOptions options, SingleRunCandidate size)
    {
        var reasons = new List<string>();
        if (!size.MeetsDrop)
            reasons.Add(
                $"loses {N(size.Drop.Volts)} V, {N(size.DropShare.Percent)} %, with {N(options.AllowedDrop.Percent)} % "
                    + $"allowed"
            );
        if (size.Rating.Current is not { } carries)
            reasons.Add($"has no rating: {size.Rating.Explanation}");
        else if (size.MeetsAmpacity == false)
            reasons.Add($"carries {N(carries.Amperes)} A, less than the {N(options.Current.Amperes)} A that flow");
        if (size.MeetsFuse == false)
            reasons.Add(
                $"carries {N(size.Rating.Current!.Value.Amperes)} A, less than the fuse's "
                    + $"{N(options.Fuse!.Value.Amperes)} A"
            );
        if (!size.IsStrongEnough)
            reasons.Add($"is thinner than the {N(options.MinimumArea.SquareMillimeters)} mm² wanted for strength");
        double other = 100 * (options.Current * options.OtherResistance).Volts / options.Voltage.Volts;
        if (other > options.AllowedDrop.Percent)
            reasons.Add($"and the rest of the way alone takes {N(other)} %, which no larger wire improves");
        return string.Join("; ", reasons);
    }

    private static void Check(SingleRunOptions options)
    {
        Above(options.Current.Amperes, "The current");
        Above(options.Length.Meters, "The length");
        Above(options.Voltage.Volts, "The source volts");
        if (options.Fuse is { } fuse)
            Above(fuse.Amperes, "The fuse's rating");
        if (!(options.AllowedDrop.DecimalFractions is > 0 and < 1))
            throw new ArgumentOutOfRangeException(
                nameof(options),
                options.AllowedDrop,
                "The allowed drop is above 0 to below 100 %."
            );
        if (!(options.OtherResistance.Ohms >= 0))
            throw new ArgumentOutOfRangeException(
                nameof(options),
                options.OtherResistance,
                "A resistance is zero or more."
            );
        if (!(options.MinimumArea.SquareMillimeters >= 0))
            throw new ArgumentOutOfRangeException(
                nameof(options),
                options.MinimumArea,
                "The least area is zero or more."
            );
        if (!Enum.IsDefined(options.Family))
            throw new ArgumentOutOfRangeException(
                nameof(options),
                options.Family,
                $"A kind of wire is one of {string.Join(", ", Enum.GetNames<WireConstruction>())}."
            );

        static void Above(double value, string what)
        {
            if (!(value > 0) || double.IsInfinity(value))
                throw new ArgumentOutOfRangeException(nameof(options), value, $"{what} is above zero.");
        }
    }
}
