using System.Collections.Immutable;
using System.Globalization;
using Lighting.Calc.Harness;
using Lighting.Calc.Lamps;
using Lighting.Calc.Network;
using UnitsNet;

namespace Lighting.Calc.Fuses;

/// <summary>The current through a fuse when a setting is switched on cold, as one curve over time.</summary>
/// <remarks>
/// Every lit filament the fuse feeds starts cold at once, behind the resistance that costs it its drop when hot, (source volts − lamp volts)/lamp current:
/// wires that several filaments share are thereby shared in the surge as they are when hot. Other loads draw their steady current.
/// A fuse is melted by I²t: at each moment the energy so far is compared with that of the shortest published opening time at
/// the same effective current; above the last gate with that gate's.
/// </remarks>
internal sealed class FuseSurge
{
    private readonly Setting _setting;
    private readonly ImmutableArray<double> _seconds;
    private readonly ImmutableArray<double> _amperes;
    private readonly ImmutableArray<double> _effective;
    private readonly double _steady;
    private readonly bool _isLimited;
    private readonly bool _isInTable;

    private FuseSurge(OperatingPoint point, IReadOnlyList<int> lamps)
    {
        _setting = point.Setting;
        double others = 0;
        var curves = new List<(int Quantity, WarmUpCurve Curve)>();
        foreach (int i in lamps)
        {
            LampState lamp = point.Lamps[i];
            double amperes = Math.Abs(lamp.Current.Amperes);
            _steady += amperes;
            if (!IsFilament(lamp))
            {
                others += amperes;
                continue;
            }

            double ohms = SeriesOhms(point, lamp);
            _isLimited |= ohms > 1e-9;
            curves.Add((lamp.Lamp.Quantity, new FilamentWarmUp(lamp.Lamp.Specification).Curve(point.SupplyVoltage.Volts, ohms)));
        }

        _isInTable = curves.All(c => c.Curve.IsInTable);
        _seconds = [.. curves.SelectMany(c => c.Curve.Seconds).Append(0).Distinct().Order()];
        double[] sum = new double[_seconds.Length];
        foreach ((int quantity, WarmUpCurve curve) in curves)
            curve.AddAt(_seconds, quantity, sum);
        _amperes = [.. sum.Select(filaments => others + filaments)];
        _effective = Effective();
    }

    /// <summary>The surge of the setting with the largest peak; null where the fuse feeds no lamp that is ever lit.</summary>
    public static FuseSurge? Worst(Bike bike, int fuse, FuseScope scope, IReadOnlyList<OperatingPoint> points)
    {
        int[] lamps = [.. Enumerable.Range(0, bike.Lamps.Length).Where(i => !bike.HasNetwork || scope.Lamps.Contains(i))];
        double?[] coldOhms = [.. bike.Lamps.Select(l => IsFilament(l.Specification) ? new FilamentWarmUp(l.Specification).ColdOhms : (double?)null)];
        (OperatingPoint worst, double peak) = points.Select(p => (Point: p, Peak: Peak(p, lamps, coldOhms))).MaxBy(p => p.Peak);
        return peak > 0 ? new FuseSurge(worst, lamps) : null;
    }

    /// <summary>The surge against one rating.</summary>
    public SwitchingOn Against(FuseStyle style, double ratingAmperes)
    {
        double? share = MeltingShare(FuseGates.Of(style), ratingAmperes);
        double peak = _amperes[0], half = HalfOfExcessSeconds();
        string limit = _isLimited ? "limited by the battery's and the wires' resistance and the cold filaments" : "limited by the cold filaments alone, since the lists give no resistance before them";
        string melting = share is { } s ? string.Create(CultureInfo.InvariantCulture, $"{100 * s:0} % of the energy that may melt it") : "the energy that melts it is not published";
        bool surges = peak > _steady * (1 + 1e-6);
        string hot = _isInTable ? "" : "; a filament runs hotter than the table of tungsten, so its time is not certain";
        return new SwitchingOn
        {
            Setting = _setting,
            Peak = ElectricCurrent.FromAmperes(peak),
            Steady = ElectricCurrent.FromAmperes(_steady),
            HalfOfExcess = Duration.FromSeconds(half),
            MeltingShare = share is { } part ? Ratio.FromDecimalFractions(part) : null,
            IsLimitedBySource = _isLimited,
            Explanation = surges
                ? string.Create(CultureInfo.InvariantCulture, $"{peak:0.#} A in the first instant ({_setting}), {limit}; half of the excess is gone after {OpeningTime.Text(half)}; {melting}{hot}")
                : $"no surge: it feeds no cold filament ({_setting})",
        };
    }

    private static double Peak(OperatingPoint point, int[] lamps, double?[] coldOhms)
    {
        double sum = 0;
        foreach (int i in lamps)
        {
            LampState lamp = point.Lamps[i];
            sum += IsFilament(lamp) && coldOhms[i] is { } cold
                ? lamp.Lamp.Quantity * FilamentWarmUp.PeakAmperes(point.SupplyVoltage.Volts, cold, SeriesOhms(point, lamp))
                : Math.Abs(lamp.Current.Amperes);
        }

        return sum;
    }

    private static bool IsFilament(LampSpecification lamp) => lamp.Type is LampType.Filament or LampType.Halogen;

    private static bool IsFilament(LampState lamp) => IsFilament(lamp.Lamp.Specification) && lamp.Current.Amperes != 0;

    // Of one of its quantity.
    private static double SeriesOhms(OperatingPoint point, LampState lamp) =>
        Math.Max(0, point.SupplyVoltage.Volts - Math.Abs(lamp.Voltage.Volts)) / Math.Abs(lamp.Current.Amperes) * lamp.Lamp.Quantity;

    private double HalfOfExcessSeconds()
    {
        double half = (_amperes[0] + _amperes[^1]) / 2;
        for (int i = 1; i < _amperes.Length; i++)
            if (_amperes[i] <= half)
                return _seconds[i - 1] + (_amperes[i - 1] - half) / (_amperes[i - 1] - _amperes[i]) * (_seconds[i] - _seconds[i - 1]);
        return 0;
    }

    // From the second time on: the steady current that would have brought in the same energy.
    private ImmutableArray<double> Effective()
    {
        var effective = ImmutableArray.CreateBuilder<double>();
        double energy = 0;
        for (int i = 1; i < _seconds.Length; i++)
        {
            energy += (_amperes[i] * _amperes[i] + _amperes[i - 1] * _amperes[i - 1]) / 2 * (_seconds[i] - _seconds[i - 1]);
            effective.Add(Math.Sqrt(energy / _seconds[i]));
        }

        return effective.ToImmutable();
    }

    private double? MeltingShare(FuseGates gates, double rating)
    {
        if (!gates.HasFastest)
            return null;
        double worst = 0;
        for (int i = 1; i < _seconds.Length; i++)
        {
            double effective = _effective[i - 1] / rating;
            double? fastest = effective > gates.LastFastest.OfRating
                ? gates.LastFastest.Seconds * Math.Pow(gates.LastFastest.OfRating / effective, 2)
                : gates.FastestSeconds(effective);
            if (fastest is { } least)
                worst = Math.Max(worst, _seconds[i] / least);
        }

        return worst;
    }
}
