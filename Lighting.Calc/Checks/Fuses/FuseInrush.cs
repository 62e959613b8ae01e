using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The current through a fuse when a setting is switched on cold, as one curve over time.</summary>
/// <remarks>
/// Every lit filament the fuse feeds starts cold at once, behind the resistance that costs it its drop when hot,
/// (source voltage − lamp voltage)/lamp current: wires that several filaments share are thereby shared in the surge as
/// they are when hot. Other loads draw their steady current. A fuse is melted by I²t: at each moment the energy so far
/// is compared with that of the shortest published opening time at the same effective current; above the last gate with
/// that gate's. The moments are those of the filament that adds most to the surge, then those of the one that warms up
/// last. Where a style has no such times, all of I²t until the current is within a tenth of the steady one is held
/// against the nominal melting energy of its rating, if there is one: the fuse sheds heat meanwhile, so this asks
/// rather too much of it.
/// </remarks>
internal sealed class FuseInrush
{
    // Amperes below which a filament is off: the resistance before it does not follow from them.
    private const double Least = 1e-9;

    private readonly Setting _setting;
    private readonly ImmutableArray<double> _seconds;
    private readonly ImmutableArray<double> _amperes;
    private readonly ImmutableArray<double> _energy;

    // From the second time on; and the steady current that would have brought in the same energy.
    private readonly double[] _logSeconds;
    private readonly double[] _logEffective;
    private readonly double _steady;
    private readonly bool _isLimited;
    private readonly bool _isInTable;

    private FuseInrush(OperatingPoint point, IReadOnlyList<int> lamps, IReadOnlySet<int>? cold = null)
    {
        _setting = point.Setting;
        double others = 0;
        var curves = new List<(int Quantity, WarmUpCurve Curve)>();
        foreach (int i in lamps)
        {
            LampState lamp = point.Lamps[i];
            double amperes = Math.Abs(lamp.Current.Amperes);
            _steady += amperes;
            if (!IsFilament(lamp) || cold?.Contains(i) == false)
            {
                others += amperes;
                continue;
            }

            double ohms = SeriesOhms(point.SupplyVoltage.Volts, lamp.Voltage.Volts, amperes, lamp.Lamp.Quantity);
            _isLimited |= ohms > 1e-9;
            curves.Add(
                (lamp.Lamp.Quantity, new FilamentInrush(lamp.Lamp.Specification).Curve(point.SupplyVoltage.Volts, ohms))
            );
        }

        _isInTable = curves.All(c => c.Curve.IsInTable);
        _seconds = [0];
        if (curves.Count > 0)
        {
            ImmutableArray<double> main = curves
                .MaxBy(c => c.Quantity * (c.Curve.Amperes[0] - c.Curve.Amperes[^1]))
                .Curve.Seconds;
            _seconds = [.. main, .. curves.MaxBy(c => c.Curve.Seconds[^1]).Curve.Seconds.Where(s => s > main[^1])];
        }

        double[] sum = new double[_seconds.Length];
        Array.Fill(sum, others);
        foreach ((int quantity, WarmUpCurve curve) in curves)
            curve.AddAt(_seconds, quantity, sum);
        _amperes = ImmutableCollectionsMarshal.AsImmutableArray(sum);
        _energy = EnergyOver(_seconds, _amperes);
        _logSeconds = new double[_seconds.Length - 1];
        _logEffective = new double[_seconds.Length - 1];
        for (int i = 0; i < _logSeconds.Length; i++)
        {
            _logSeconds[i] = Math.Log(_seconds[i + 1]);
            _logEffective[i] = Math.Log(Math.Sqrt(_energy[i + 1] / _seconds[i + 1]));
        }
    }

    /// <summary>The surge of the setting with the largest peak; null where the fuse feeds no lamp that is ever
    /// lit.</summary>
    public static FuseInrush? Worst(Bike bike, FuseScope scope, IReadOnlyList<OperatingPoint> points)
    {
        int[] lamps =
        [
            .. Enumerable.Range(0, bike.Lamps.Length).Where(i => !bike.HasNetwork || scope.Lamps.Contains(i)),
        ];
        double?[] coldOhms =
        [
            .. bike.Lamps.Select(l =>
                IsFilament(l.Specification) ? new FilamentInrush(l.Specification).ColdOhms : (double?)null
            ),
        ];
        (OperatingPoint worst, double peak) = points
            .Select(p => (Point: p, Peak: Peak(bike, p, lamps, coldOhms)))
            .MaxBy(p => p.Peak);
        return peak > 0 ? new FuseInrush(worst, lamps) : null;
    }

    /// <summary>The surge of the lamps that are switched on again and again, the others being hot, in the setting where
    /// it is largest; null where the fuse feeds none.</summary>
    public static FuseInrush? Repeated(
        Bike bike,
        FuseScope scope,
        IReadOnlyList<OperatingPoint> points,
        MomentaryLoads momentary
    )
    {
        int[] lamps =
        [
            .. Enumerable.Range(0, bike.Lamps.Length).Where(i => !bike.HasNetwork || scope.Lamps.Contains(i)),
        ];
        HashSet<int> cold =
        [
            .. lamps.Where(i => momentary.IsRepeated(i) && IsFilament(bike.Lamps[i].Specification)),
        ];
        if (cold.Count == 0)
            return null;
        OperatingPoint worst = points.MaxBy(p => cold.Sum(i => Math.Abs(p.Solved.LampAmperes(i))))!;
        return cold.Any(i => Math.Abs(worst.Solved.LampAmperes(i)) > Least) ? new FuseInrush(worst, lamps, cold) : null;
    }

    /// <summary>Where it brings more of the energy that may melt a fuse than is printed for as many pulses as any: the
    /// share, and the setting.</summary>
    public (Ratio Share, Setting Setting)? Ages(FuseStyle style, double ratingAmperes) =>
        MeltingShare(style, ratingAmperes) is { } share && share > FusePulses.Longest.Share.DecimalFractions
            ? (Ratio.FromDecimalFractions(share), _setting)
            : null;

    /// <summary>Whether a fuse is shown to survive it; null where its melting energy is not published.</summary>
    public bool? IsSurvivedBy(FuseStyle style, double ratingAmperes) =>
        MeltingShare(style, ratingAmperes) is { } share ? share < 1 : null;

    /// <summary>The surge against one rating.</summary>
    public InrushCheck Against(FuseStyle style, double ratingAmperes)
    {
        double? share = MeltingShare(style, ratingAmperes);
        double surge = share is null ? AmpereSquaredSeconds() : 0;
        double peak = _amperes[0],
            half = HalfOfExcessSeconds();
        string limit = _isLimited
            ? "limited by the battery's and the wires' resistance and the cold filaments"
            : "limited by the cold filaments alone, since the lists give no resistance before them";
        string melting = share is { } s
            ? string.Create(CultureInfo.InvariantCulture, $"{100 * s:0} % of the energy that may melt it")
            : string.Create(
                CultureInfo.InvariantCulture,
                $"it brings {(surge >= 10 ? Math.Round(surge) : surge):0.###} A²s; what melts a "
                    + $"{TimeCurrentLimits.NameOf(style)} fuse of {ratingAmperes:0.###} A is not known: see that its "
                    + $"data "
                    + $"sheet has more"
            );
        bool surges = peak > _steady * (1 + 1e-6);
        string hot = _isInTable
            ? ""
            : "; a filament runs hotter than the table of tungsten, so its time is not certain";
        return new InrushCheck(
            Peak: ElectricCurrent.FromAmperes(peak),
            Steady: ElectricCurrent.FromAmperes(_steady),
            HalfOfExcess: Duration.FromSeconds(half),
            MeltingShare: share is { } part ? Ratio.FromDecimalFractions(part) : null,
            Explanation: surges
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"{peak:0.#} A in the first instant ({_setting}), {limit}; half of the excess is gone after "
                        + $"{OpeningTime.Text(half)}; {melting}{hot}"
                )
                : $"no surge: it feeds no cold filament ({_setting})"
        );
    }

    private static double Peak(Bike bike, OperatingPoint point, int[] lamps, double?[] coldOhms)
    {
        double sum = 0,
            volts = point.Solved.SupplyVolts;
        foreach (int i in lamps)
        {
            double amperes = Math.Abs(point.Solved.LampAmperes(i));
            int quantity = bike.Lamps[i].Quantity;
            sum +=
                coldOhms[i] is { } cold && amperes > Least
                    ? quantity
                        * FilamentInrush.PeakAmperes(
                            volts,
                            cold,
                            SeriesOhms(volts, point.Solved.LampVolts(i), amperes, quantity)
                        )
                    : amperes;
        }

        return sum;
    }

    private static bool IsFilament(LampSpecification lamp) => lamp.Type is LampType.Filament or LampType.Halogen;

    private static bool IsFilament(LampState lamp) =>
        IsFilament(lamp.Lamp.Specification) && Math.Abs(lamp.Current.Amperes) > Least;

    // Of one of its quantity.
    private static double SeriesOhms(double supplyVolts, double volts, double amperes, int quantity) =>
        Math.Max(0, supplyVolts - Math.Abs(volts)) / amperes * quantity;

    private double HalfOfExcessSeconds()
    {
        double half = (_amperes[0] + _amperes[^1]) / 2;
        for (int i = 1; i < _amperes.Length; i++)
            if (_amperes[i] <= half)
                return _seconds[i - 1]
                    + (_amperes[i - 1] - half) / (_amperes[i - 1] - _amperes[i]) * (_seconds[i] - _seconds[i - 1]);
        return 0;
    }

    // I²t from the first instant to each time.
    private static ImmutableArray<double> EnergyOver(ImmutableArray<double> seconds, ImmutableArray<double> amperes)
    {
        double[] energy = new double[seconds.Length];
        for (int i = 1; i < energy.Length; i++)
            energy[i] =
                energy[i - 1]
                + (amperes[i] * amperes[i] + amperes[i - 1] * amperes[i - 1]) / 2 * (seconds[i] - seconds[i - 1]);
        return ImmutableCollectionsMarshal.AsImmutableArray(energy);
    }

    // All of it, steady share included, until the current is within a tenth of the steady one.
    private double AmpereSquaredSeconds()
    {
        int last = 0;
        while (last < _energy.Length - 1 && _amperes[last] > 1.1 * _amperes[^1])
            last++;
        return _energy[last];
    }

    // The largest share of the melting energy at any moment; null where that is not published.
    private double? MeltingShare(FuseStyle style, double rating)
    {
        var gates = TimeCurrentLimits.Of(style, rating);
        if (!gates.HasFastest)
            return AmpereSquaredSeconds() / FuseMelting.AmpereSquaredSeconds(style, rating);
        double logRating = Math.Log(rating),
            logLast = Math.Log(gates.LastFastest.OfRating),
            worst = double.NegativeInfinity;
        for (int i = 0; i < _logSeconds.Length; i++)
        {
            double logOfRating = _logEffective[i] - logRating;
            double? fastest =
                logOfRating > logLast
                    ? Math.Log(gates.LastFastest.Seconds) + 2 * (logLast - logOfRating)
                    : gates.LogFastestSeconds(logOfRating);
            if (fastest is { } least)
                worst = Math.Max(worst, _logSeconds[i] - least);
        }

        return Math.Exp(worst);
    }
}
