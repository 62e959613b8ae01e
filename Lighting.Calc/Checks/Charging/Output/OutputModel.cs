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

    private readonly double _chargingVolts;
    private readonly double _bridgeVolts;

    private OutputModel(
        ImmutableArray<ChargingCurve> curves,
        ImmutableArray<PermanentMagnetFit> machines,
        ImmutableArray<AlternatorEquivalentFit> coils,
        double chargingVolts,
        double bridgeVolts
    )
    {
        _chargingVolts = chargingVolts;
        _bridgeVolts = bridgeVolts;
        Curves = curves;
        Machines = machines;
        Coils = coils;
        _fitted = [.. machines.Select(FittedWinding.Of), .. coils.Select(FittedWinding.Of)];
    }

    public ImmutableArray<ChargingCurve> Curves { get; }

    public ImmutableArray<PermanentMagnetFit> Machines { get; }

    public ImmutableArray<AlternatorEquivalentFit> Coils { get; }

    /// <summary>The output of a bike's charging list, at its charging voltage.</summary>
    /// <remarks>A current that was taken at another voltage is that at the charging voltage of another speed: see <see
    /// cref="GeneratorAt"/>.</remarks>
    public static OutputModel Of(Bike bike, ChargingOptions options)
    {
        double charging = bike.ChargingVoltage.Volts,
            bridge = options.BridgeDrop.Volts;
        ImmutableArray<ChargingCurve> curves = ChargingCurve.Of(
            bike.Charging.Select(p =>
                p.Voltage is { } taken && taken.Volts != charging
                    ? p with
                    {
                        Speed = p.Speed * ((charging + bridge) / (taken.Volts + bridge)),
                    }
                    : p
            )
        );
        return new OutputModel(
            curves,
            options.Model == ChargingModel.FittedMachine ? [.. curves.Select(Machine)] : [],
            options.Model == ChargingModel.FittedCoil
                ? [.. curves.Select(c => Coil(c, bike.ChargingVoltage + options.BridgeDrop))]
                : [],
            charging,
            bridge
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

    /// <summary>What is given at a speed in a setting against the voltage; null where the output is not
    /// known.</summary>
    /// <remarks>
    /// The current of a lossless winding into a constant voltage, √(E² − V²)/X with E and X in proportion to the speed,
    /// depends on V/n alone: I(n, V) = I(n·V0/V, V0), V0 the charging voltage and V both with the rectifier's drop
    /// (source: phasor diagram of the round-rotor synchronous machine). Beyond the last point of a list its current is
    /// that of the point, below the first one it falls on a straight line. A fitted coil has its own law, with its
    /// resistance.
    /// </remarks>
    public GeneratorOutput? GeneratorAt(double rpm, Setting setting) =>
        At(rpm, setting).Current is null ? null : GeneratorNear(rpm, setting);

    /// <summary>The same a little beyond the list, as of a speed that is held no better, or of weak magnets.</summary>
    public GeneratorOutput GeneratorNear(double rpm, Setting setting)
    {
        ChargingCurve[] curves = [.. Curves.Where(c => c.When.Holds(setting))];
        FittedWinding[] machines = [.. Machines.Where(m => m.When.Holds(setting)).Select(FittedWinding.Of)];
        AlternatorEquivalentFit[] coils = [.. Coils.Where(c => c.When.Holds(setting))];
        return new GeneratorOutput(rpm, volts =>
        {
            double behind = Math.Max(0, volts) + _bridgeVolts,
                alike = behind == 0 ? double.PositiveInfinity : rpm * ((_chargingVolts + _bridgeVolts) / behind);
            if (coils.Length > 0)
                return coils.Sum(c => c.Source.CurrentAt(Rpm(rpm), ElectricPotential.FromVolts(behind))?.Amperes ?? 0);
            return machines.Length > 0 ? machines.Sum(m => m.Amperes(alike)) : curves.Sum(c => c.AmperesNear(alike));
        });
    }

    /// <summary>Which windings work in a setting, a bit each.</summary>
    public long WindingsIn(Setting setting)
    {
        long windings = 0;
        for (int i = 0; i < Curves.Length; i++)
            if (Curves[i].When.Holds(setting))
                windings |= 1L << i;
        return windings;
    }

    /// <summary>The listed speed of the largest output in a setting; null where none is known.</summary>
    public double? MostRpm(Setting setting) =>
        KnownSpan(setting) is not { } span
            ? null
            : Curves
                .SelectMany(c => c.KnotsRpm)
                .Where(n => n > 0 && n >= span.Low && n <= span.High)
                .Select(n => (Rpm: n, At(n, setting).Current))
                .Where(n => n.Current is not null)
                .OrderByDescending(n => n.Current!.Value.Amperes)
                .Select(n => (double?)n.Rpm)
                .FirstOrDefault();

    /// <summary>The slowest listed speed at which the output in a setting is known; null where none is.</summary>
    public double? SlowestRpm(Setting setting) =>
        KnownSpan(setting) is not { } span
            ? null
            : Curves
                .SelectMany(c => c.KnotsRpm)
                .Where(n => n > 0 && n >= span.Low && n <= span.High)
                .Select(n => (double?)n)
                .Min();

    /// <summary>The speeds between which the output in a setting is known; null where there are none. Without a winding
    /// at work, all that are listed.</summary>
    public (double Low, double High)? KnownSpan(Setting setting)
    {
        if (Curves.IsEmpty)
            return null;
        ChargingCurve[] curves = [.. Curves.Where(c => c.When.Holds(setting))];
        if (curves.Length == 0)
            curves = [.. Curves];
        double low = curves.Max(c => c.LowestKnownRpm),
            high = curves.Min(c => c.LastRpm);
        return low <= high ? (low, high) : null;
    }

    /// <summary>The speed from which the output covers a demand at a voltage.</summary>
    public BreakEven BreakEvenAt(double demandAmperes, Setting setting, double volts) =>
        NoSearch(demandAmperes, setting)
        ?? OfCurves(demandAmperes, [.. Curves.Where(c => c.When.Holds(setting))], PiecesBetweenPoints, rpm =>
            GeneratorAt(rpm, setting)?.AmperesAt(volts)
        );

    public BreakEven BreakEvenOf(double demandAmperes, Setting setting)
    {
        if (NoSearch(demandAmperes, setting) is { } known)
            return known;
        ImmutableArray<ChargingCurve> curves = [.. Curves.Where(c => c.When.Holds(setting))];
        return _fitted.IsEmpty
            ? OfCurves(demandAmperes, curves, curves.Length == 1 ? 1 : PiecesBetweenPoints, rpm => Sum(curves, rpm))
            : OfFits(demandAmperes, [.. _fitted.Where(f => f.When.Holds(setting))]);
    }

    private BreakEven? NoSearch(double demandAmperes, Setting setting) =>
        demandAmperes <= 0 ? new BreakEven(BreakEvenOutcome.Always, null, null)
        : Curves.IsEmpty ? new BreakEven(BreakEvenOutcome.NotKnown, null, null)
        : Curves.Any(c => c.When.Holds(setting)) ? null
        : new BreakEven(BreakEvenOutcome.Never, null, null);

    private static double? Sum(ImmutableArray<ChargingCurve> curves, double rpm)
    {
        double? sum = 0;
        foreach (ChargingCurve curve in curves)
            sum += curve.AmperesAt(rpm, curve.RangeOf(rpm));
        return sum;
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

    private static BreakEven OfCurves(
        double demandAmperes,
        ImmutableArray<ChargingCurve> curves,
        int pieces,
        Func<double, double?> amperesAt
    )
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
        foreach (double right in Pieces(knots, pieces))
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

        double Net(double rpm) =>
            amperesAt(rpm) - demandAmperes ?? throw new InvalidOperationException($"{rpm} rpm is not on the curve.");

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
