using System.Runtime.Intrinsics;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Answers one sample after another: all states solved, the worst of each read off. For one thread; a sample allocates nothing.</summary>
/// <remarks>
/// Every state is solved from the listed bike's volts, so that a sample's answer is its own and not a matter of what came before.
/// Powers go through the vector exponential and logarithm, which are the runtime's own code and not the platform's.
/// </remarks>
internal sealed class Sampler
{
    // A filament at a billionth of its volts gives no light, and is below what the power of many numbers takes.
    private const double DarkRatio = 1e-9;

    private const double Tolerance = 1e-9;

    private readonly SamplingPlan _plan;
    private readonly QuantityPlaces _places;
    private readonly SampleParts _parts;
    private readonly StateSolver[] _states;
    private readonly int[][] _lampsOf;
    private readonly int[][] _chainOfFuse;
    private readonly bool[] _isBalanced;
    private readonly int[] _placeOfLamp;
    private readonly LampSpecification[] _lamps;
    private readonly double[] _off;
    private readonly double[] _duty;
    private readonly double[] _usable;
    private readonly double[] _greatestVolts;
    private readonly double[] _demand;
    private readonly CombinedOutput[] _windings;
    private readonly double _allowedDrop;

    public Sampler(SamplingPlan plan, double[] usableAmperes)
    {
        _plan = plan;
        _places = new QuantityPlaces(plan);
        _usable = usableAmperes;
        Bike bike = plan.Bike;
        _parts = new SampleParts(plan.Uncertain, plan.Network);
        _parts.Set(plan.Uncertain.Listed());
        _states = [.. plan.Circuits.Select((c, i) => new StateSolver(c, bike, _parts, _parts.SupplyVolts, plan.Settings[i]))];
        _lampsOf = [.. plan.LampsMeant.Select(m => m.ToArray())];
        _chainOfFuse = [.. _states.Select(s => plan.Network.FuseConductors.Select(s.ChainOf).ToArray())];
        _isBalanced = [.. _states.Select((_, i) => plan.IsBalanced(i))];
        _placeOfLamp = [.. Enumerable.Range(0, bike.Lamps.Length).Select(l => plan.Lamps.IndexOf(l))];
        _lamps = [.. bike.Lamps.Select(l => l.Specification)];
        _duty = [.. bike.Lamps.Select(l => l.Duty.DecimalFractions)];
        _off = [.. _duty.Select(d => 1 - d)];
        _greatestVolts = new double[plan.Lamps.Length];
        _demand = new double[_states.Length];
        _windings = [.. plan.Windings.Select(w => new CombinedOutput(w))];
        _allowedDrop = bike.AllowedDrop.DecimalFractions;
    }

    /// <summary>Answers a sample.</summary>
    /// <param name="values">The parts' values.</param>
    /// <param name="quantities">Its results, by <see cref="QuantityPlaces"/>.</param>
    /// <param name="verdicts">Whether each verdict is good.</param>
    /// <exception cref="NetworkNotSolvedException">A state has no operating point with these values.</exception>
    public void Answer(double[] values, Span<double> quantities, Span<bool> verdicts)
    {
        _parts.Set(values);
        quantities.Clear();
        quantities[.._greatestVolts.Length].Fill(double.PositiveInfinity);
        Array.Clear(_greatestVolts);
        for (int s = 0; s < _states.Length; s++)
        {
            bool isAskedFor = _plan.IsAskedFor[s];
            if (isAskedFor)
            {
                Solve(s, _parts.SupplyVolts);
                Read(s, quantities);
            }

            if (!_isBalanced[s])
                continue;
            if (!isAskedFor || _plan.Uncertain.Kind != SupplyKind.Regulator)
                Solve(s, _parts.ChargingVolts);
            _demand[s] = AverageAmperes(_states[s]);
        }

        Judge(quantities, verdicts);
    }

    private void Solve(int state, double volts)
    {
        if (!_states[state].Solve(_parts, volts))
            throw new NetworkNotSolvedException($"With parts within their spreads no solution was found in the setting '{_plan.Settings[state]}'.", _plan.Settings[state], isDeadShort: false);
    }

    private void Read(int s, Span<double> quantities)
    {
        StateSolver state = _states[s];
        foreach (int lamp in _lampsOf[s])
        {
            ref double least = ref quantities[_places.LampVolts(_placeOfLamp[lamp])];
            least = Math.Min(least, state.LampVolts(lamp));
        }

        foreach (int load in state.Loads)
            if (_placeOfLamp[load] is var place and >= 0)
                _greatestVolts[place] = Math.Max(_greatestVolts[place], state.LampVolts(load));
        int[] chains = _chainOfFuse[s];
        for (int f = 0; f < chains.Length; f++)
        {
            if (chains[f] < 0)
                continue;
            ref double most = ref quantities[_places.FuseAmperes(f)];
            most = Math.Max(most, state.ChainAmperes(chains[f]));
        }
    }

    private void Judge(Span<double> quantities, Span<bool> verdicts)
    {
        for (int i = 0; i < _greatestVolts.Length; i++)
        {
            LampSpecification lamp = _lamps[_plan.Lamps[i]];
            double volts = quantities[_places.LampVolts(i)];
            quantities[_places.LampLight(i)] = Light(lamp, volts);
            double drop = quantities[_places.LampDrop(i)] = 1 - volts / _parts.SupplyVolts;
            verdicts[_places.DropHolds(i)] = drop <= _allowedDrop + Tolerance / 100;
            verdicts[_places.LampHolds(i)] = lamp.Type switch
            {
                LampType.Led => volts >= lamp.MinimumVoltage!.Value.Volts,
                LampType.Filament or LampType.Halogen => _greatestVolts[i] <= LampChecks.OverVoltsRatio * lamp.ReferenceVoltage.Volts,
                _ => true,
            };
        }

        for (int f = 0; f < _usable.Length; f++)
            verdicts[_places.FuseCarries(f)] = quantities[_places.FuseAmperes(f)] <= _usable[f] + Tolerance;
        double rpm = _plan.HasBreakEven ? BreakEvenRpm() : 0, charge = _plan.HasRide ? RideAmpereHours() : 0;
        quantities[_places.BreakEvenRpm] = rpm;
        quantities[_places.RideAmpereHours] = charge;
        verdicts[_places.Covered] = double.IsFinite(rpm);
        verdicts[_places.RideHolds] = charge >= 0;
        verdicts[_places.All] = !verdicts[.._places.All].Contains(false);
    }

    /// <summary>Light against that at the reference volts; the share of a lamp's own current in it falls out.</summary>
    private static double Light(LampSpecification lamp, double volts)
    {
        if (lamp.Type is not (LampType.Filament or LampType.Halogen))
            return lamp.RelativeLightAt(ElectricPotential.FromVolts(volts))?.DecimalFractions ?? 0;
        double ratio = Math.Abs(volts) / lamp.ReferenceVoltage.Volts;
        return ratio > DarkRatio ? VectorPower.Of(Vector512.Create(ratio), FilamentLaw.LightExponent).ToScalar() : 0;
    }

    /// <summary>As <see cref="AverageLoads"/> has it.</summary>
    private double AverageAmperes(StateSolver state)
    {
        double total = state.SourceAmperes, lamps = 0, off = 0, power = 0, dutyPower = 0;
        foreach (int load in state.Loads)
        {
            double amperes = Math.Abs(state.LampAmperes(load)), watts = amperes * Math.Abs(state.LampVolts(load));
            lamps += amperes;
            off += _off[load] * amperes;
            power += watts;
            dutyPower += _duty[load] * watts;
        }

        bool series = lamps > total * (1 + 1e-6) + 1e-6;
        return series && power > 0 ? total * dutyPower / power : total - off;
    }

    private double BreakEvenRpm()
    {
        double worst = 0;
        for (int w = 0; w < _windings.Length; w++)
        {
            double demand = 0;
            foreach (int state in _plan.StatesOfWindings[w])
                demand = Math.Max(demand, _demand[state]);
            demand += _plan.Options.Charging.FieldCurrent.Amperes;
            if (demand > 0)
                worst = Math.Max(worst, _windings[w].IsEmpty ? double.PositiveInfinity : _windings[w].RpmFor(demand / _parts.StatorFactor));
        }

        return worst;
    }

    /// <summary>As <see cref="RideBalance"/> counts it.</summary>
    private double RideAmpereHours()
    {
        ChargingOptions options = _plan.Options.Charging;
        double? capacity = _plan.Bike.BatteryCapacity is { AmpereHours: > 0 } c ? c.AmpereHours : null;
        double share = options.InitialStateOfCharge.DecimalFractions, sum = 0;
        foreach (PlannedStretch stretch in _plan.Ride)
        {
            double demand = stretch.Stands ? StandingAmperes(stretch.State, share) : (stretch.State < 0 ? 0 : _demand[stretch.State]) + options.FieldCurrent.Amperes;
            double net = stretch.OutputAmperes * _parts.StatorFactor - demand;
            double gained = net * stretch.Hours * (net > 0 ? options.ChargeEfficiency.DecimalFractions : 1);
            sum += gained;
            if (capacity is { } hours)
                share = Math.Clamp(share + gained / hours, 0, 1);
        }

        return sum;
    }

    private double StandingAmperes(int state, double share)
    {
        if (state < 0)
            return 0;
        Solve(state, _parts.BatteryFactor * LeadAcid.OpenCircuitVoltage(Ratio.FromDecimalFractions(share), _plan.Bike.SystemVoltage).Volts);
        return AverageAmperes(_states[state]);
    }
}
