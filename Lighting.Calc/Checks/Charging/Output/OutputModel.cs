using System.Collections.Immutable;
using MathNet.Numerics.RootFinding;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The windings of a bike added up, by their curves or by machines fitted to them.</summary>
internal sealed class OutputModel
{
    /// <summary>Pieces into which the span between two points is cut to find every crossing of the sum of several
    /// curves; one curve rises or falls throughout and needs no cut.</summary>
    private const int PiecesBetweenPoints = 8;

    private readonly ImmutableArray<FittedWinding> _fitted;

    private OutputModel(
        ImmutableArray<ChargingCurve> curves,
        ImmutableArray<PermanentMagnetFit> machines,
        ImmutableArray<AlternatorEquivalentFit> coils
    )
    {
        Curves = curves;
        Machines = machines;
        Coils = coils;
        _fitted = [.. machines.Select(FittedWinding.Of), .. coils.Select(FittedWinding.Of)];
    }

    public ImmutableArray<ChargingCurve> Curves { get; }

    public ImmutableArray<PermanentMagnetFit> Machines { get; }

    public ImmutableArray<AlternatorEquivalentFit> Coils { get; }

    /// <param name="points">The charging list.</param>
    /// <param name="model">How output is found.</param>
    /// <param name="terminalVoltage">Charging volts and bridge: what a coil has to pass before it gives
    /// anything.</param>
    public static OutputModel Of(
        IEnumerable<ChargingPoint> points,
        ChargingModel model,
        ElectricPotential terminalVoltage
    )
    {
        ImmutableArray<ChargingCurve> curves = ChargingCurve.Of(points);
        return new OutputModel(
            curves,
            model == ChargingModel.FittedMachine ? [.. curves.Select(Machine)] : [],
            model == ChargingModel.FittedCoil ? [.. curves.Select(c => Coil(c, terminalVoltage))] : []
        );
    }

    public ChargingOutput At(double rpm, Setting setting)
    {
        if (rpm == 0)
            return new ChargingOutput(OutputRange.Standing, ElectricCurrent.Zero);
        if (Curves.IsEmpty)
            return new ChargingOutput(OutputRange.NoList, null);
        ImmutableArray<ChargingCurve> curves = [.. Curves.Where(c => c.When.Holds(setting))];
        if (curves.IsEmpty)
            return new ChargingOutput(OutputRange.NoWinding, ElectricCurrent.Zero);
        if (!_fitted.IsEmpty)
        {
            ImmutableArray<FittedWinding> fits = [.. _fitted.Where(f => f.When.Holds(setting))];
            bool within = fits.All(f => rpm >= f.FirstRpm && rpm <= f.LastRpm);
            return new ChargingOutput(
                within ? OutputRange.Fitted : OutputRange.FittedBeyondPoints,
                ElectricCurrent.FromAmperes(FittedAmperes(fits, rpm))
            );
        }

        double sum = 0;
        var range = OutputRange.BelowCutIn;
        foreach (ChargingCurve curve in curves)
        {
            OutputRange its = curve.RangeOf(rpm);
            if (curve.AmperesAt(rpm, its) is not { } amperes)
                return new ChargingOutput(its, null);
            sum += amperes;
            if (its == OutputRange.OnCurve)
                range = its;
        }

        return new ChargingOutput(range, ElectricCurrent.FromAmperes(sum));
    }

    public BreakEven BreakEvenOf(double demandAmperes, Setting setting)
    {
        ImmutableArray<ChargingCurve> curves = [.. Curves.Where(c => c.When.Holds(setting))];
        if (demandAmperes <= 0)
            return new BreakEven(BreakEvenOutcome.Always, null, null);
        if (Curves.IsEmpty)
            return new BreakEven(BreakEvenOutcome.NotKnown, null, null);
        if (curves.IsEmpty)
            return new BreakEven(BreakEvenOutcome.Never, null, null);
        return _fitted.IsEmpty
            ? OfCurves(demandAmperes, curves)
            : OfFits(demandAmperes, [.. _fitted.Where(f => f.When.Holds(setting))]);
    }

    private static BreakEven OfFits(double demandAmperes, ImmutableArray<FittedWinding> fits)
    {
        if (demandAmperes >= fits.Sum(f => f.LimitAmperes))
            return new BreakEven(BreakEvenOutcome.Never, null, null);
        if (fits.Length == 1)
            return At(fits[0].RpmFor(demandAmperes), null);
        double high = fits.Max(f => f.LastRpm);
        while (FittedAmperes(fits, high) < demandAmperes)
            high *= 2;
        return At(Brent.FindRoot(rpm => FittedAmperes(fits, rpm) - demandAmperes, 0, high, 1e-9, 200), null);
    }

    private static BreakEven OfCurves(double demandAmperes, ImmutableArray<ChargingCurve> curves)
    {
        double low = curves.Max(c => c.LowestKnownRpm),
            high = curves.Min(c => c.LastRpm);
        if (low > high)
            return new BreakEven(BreakEvenOutcome.NotKnown, null, null);
        double[] knots =
        [
            low,
            .. curves.SelectMany(c => c.KnotsRpm).Where(n => n > low && n < high).Distinct().Order(),
            high,
        ];
        double? begins = Net(low) >= 0 ? low : null;
        bool fromStart = begins is not null;
        double left = low;
        foreach (double right in Pieces(knots, curves.Length == 1 ? 1 : PiecesBetweenPoints))
        {
            if (begins is null && Net(right) >= 0)
                begins = Crossing(left, right);
            else if (begins is not null && Net(right) < 0)
                return Result(Crossing(left, right));
            left = right;
        }

        return begins is null ? new BreakEven(BreakEvenOutcome.Never, null, null) : Result(null);

        BreakEven Result(double? ends) =>
            fromStart
                ? new BreakEven(BreakEvenOutcome.BelowCurve, Rpm(low), ends is { } end ? Rpm(end) : null)
                : At(begins!.Value, ends);

        double Net(double rpm)
        {
            double net = -demandAmperes;
            foreach (ChargingCurve curve in curves)
                net +=
                    curve.AmperesAt(rpm, curve.RangeOf(rpm))
                    ?? throw new InvalidOperationException($"{rpm} rpm is not on the curve.");
            return net;
        }

        double Crossing(double from, double to) => Net(to) == 0 ? to : Brent.FindRoot(Net, from, to, 1e-9, 200);
    }

    private static IEnumerable<double> Pieces(double[] knots, int pieces)
    {
        for (int i = 1; i < knots.Length; i++)
            for (int piece = 1; piece <= pieces; piece++)
                yield return piece == pieces ? knots[i] : knots[i - 1] + (knots[i] - knots[i - 1]) * piece / pieces;
    }

    private static double FittedAmperes(ImmutableArray<FittedWinding> fits, double rpm) =>
        fits.Sum(f => f.Amperes(rpm));

    private static PermanentMagnetFit Machine(ChargingCurve curve) =>
        PermanentMagnetFit.TryFit(curve, out PermanentMagnetFit? fit, out string? reason)
            ? fit!
            : throw NoFit("machine", curve, reason!);

    private static AlternatorEquivalentFit Coil(ChargingCurve curve, ElectricPotential terminalVoltage) =>
        AlternatorEquivalentFit.TryFit(
            curve,
            terminalVoltage,
            null,
            out AlternatorEquivalentFit? fit,
            out string? reason
        )
            ? fit!
            : throw NoFit("coil", curve, reason!);

    private static ArgumentException NoFit(string what, ChargingCurve curve, string reason) =>
        new(
            $"No {what} can be fitted to the charging list{(curve.When.Terms.IsEmpty ? "" : $" when {curve.When}")}: "
                + $"{reason}."
        );

    private static BreakEven At(double rpm, double? ends) =>
        new(BreakEvenOutcome.At, Rpm(rpm), ends is { } end ? Rpm(end) : null);

    private static RotationalSpeed Rpm(double rpm) => RotationalSpeed.FromRevolutionsPerMinute(rpm);
}
