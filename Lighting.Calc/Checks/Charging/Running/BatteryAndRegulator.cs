using UnitsNet;

namespace Lighting.Calc;

/// <summary>Voltage of the bus against the surplus that battery and regulator together take, in straight
/// lines.</summary>
/// <remarks>
/// Surplus below zero: the battery discharges through its resistance from its open-circuit voltage. From zero on it
/// charges, its voltage rising in proportion to the current up to the held voltage at its <see
/// cref="ChargeAcceptance"/>. What is over goes into a shunt regulator or a Zener diode and its slope resistance up to
/// its limit, is not generated with a series regulator, and without a regulator, or beyond the limit, flows into the
/// battery through its resistance. Where the regulator is not stated the voltage counts as held.
/// </remarks>
internal sealed class BatteryAndRegulator
{
    // A battery apart from the bus needs some resistance.
    private const double LeastOhms = 1e-5;

    // In place of no conductance at all.
    private const double MostOhms = 1e12;

    private readonly RegulatorKind _kind;
    private readonly double _slopeOhms;

    // From a surplus on: the voltage there and the slope in ohms.
    private readonly (double Amperes, double Volts, double Ohms)[] _pieces;
    private readonly double _limitAmperes;

    // The most that the regulator lets the voltage rise to by itself.
    private readonly double _topVolts;

    private BatteryAndRegulator(Bike bike, ChargingOptions options, in BusChange change)
    {
        _kind = options.RegulatorOf(bike);
        HoldVolts =
            change.HeldShare
            * (
                bike.ZenerVoltage is { } zener && _kind == RegulatorKind.Shunt ? zener : bike.ChargingVoltage
            ).Volts;
        double empty =
            LeadAcid.OpenCircuitVoltage(Ratio.FromPercent(100), bike.SystemVoltage).Volts
            - LeadAcid.OpenCircuitVoltage(options.InitialStateOfCharge, bike.SystemVoltage).Volts;
        // A battery that is never charged above the held voltage rests no higher.
        OpenVolts = Math.Min(change.BatteryShare * (bike.BatteryVoltage.Volts - empty), HoldVolts);
        BatteryOhms = bike.BatteryResistance.Ohms + change.BatteryOhms;
        double rise = HoldVolts - OpenVolts,
            accepted = bike.BatteryCapacity is { AmpereHours: > 0 } capacity
                ? ChargeAcceptance.Of(capacity, change.StateOfCharge ?? options.InitialStateOfCharge).Amperes
                : 0;
        AcceptedAmperes =
            rise <= 0 ? 0
            : BatteryOhms > 0 ? Math.Min(accepted, rise / BatteryOhms)
            : accepted;
        bool isShunt = _kind == RegulatorKind.Shunt;
        double slope = isShunt ? bike.RegulatorResistance.Ohms : 0;
        IsAtBattery = bike.RegulatorPlace == RegulatorPlace.Battery;
        _slopeOhms = IsAtBattery ? Math.Max(LeastOhms, slope) : slope;
        _limitAmperes = _kind switch
        {
            RegulatorKind.None => 0,
            RegulatorKind.Shunt => options.ShuntLimit?.Amperes ?? double.PositiveInfinity,
            _ => double.PositiveInfinity,
        };
        double full = AcceptedAmperes + _limitAmperes;
        _topVolts = HoldVolts + (_slopeOhms == 0 || _limitAmperes == 0 ? 0 : _slopeOhms * _limitAmperes);
        _pieces =
        [
            (0, OpenVolts, BatteryOhms),
            (0, OpenVolts, AcceptedAmperes > 0 ? rise / AcceptedAmperes : double.PositiveInfinity),
            (AcceptedAmperes, HoldVolts, slope),
            (full, HoldVolts + (double.IsInfinity(full) ? 0 : slope * _limitAmperes), BatteryOhms),
        ];
    }

    /// <summary>What keeps surplus out of a full battery.</summary>
    public RegulatorKind Kind => _kind;

    /// <summary>Whether it stands at the battery's terminals, apart from where the generator joins.</summary>
    public bool IsAtBattery { get; }

    /// <summary>Whether it withholds the surplus from the generator.</summary>
    public bool IsSeries => _kind is RegulatorKind.Series or RegulatorKind.NotStated;

    /// <summary>Open-circuit voltage of the battery at its state of charge.</summary>
    public double OpenVolts { get; }

    /// <summary>Resistance of the battery and its posts.</summary>
    public double BatteryOhms { get; }

    /// <summary>Voltage that the regulator holds.</summary>
    public double HoldVolts { get; }

    /// <summary>Current the battery takes at that voltage; zero where its capacity is not known.</summary>
    public double AcceptedAmperes { get; }

    public static BatteryAndRegulator Of(Bike bike, ChargingOptions options) => new(bike, options, BusChange.None);

    /// <summary>The same with what a fault or a tolerance changes of them.</summary>
    public static BatteryAndRegulator Of(Bike bike, ChargingOptions options, in BusChange change) =>
        new(bike, options, change);

    /// <summary>The piece a surplus lies on: 0 discharging, 1 charging, 2 regulated, 3 beyond the regulator.</summary>
    public int PieceAt(double surplus) =>
        surplus < 0 ? 0
        : surplus < _pieces[2].Amperes ? 1
        : surplus < _pieces[3].Amperes ? 2
        : 3;

    /// <summary>A piece: the surplus it begins with, the voltage there and the slope in ohms, infinite for a
    /// step.</summary>
    public (double Amperes, double Volts, double Ohms) Piece(int piece) => _pieces[piece];

    /// <summary>Whether the regulator holds the voltage at this surplus, whatever it is exactly.</summary>
    public bool Holds(double surplus) =>
        surplus >= AcceptedAmperes && surplus <= _pieces[3].Amperes && _pieces[2].Ohms == 0;

    /// <summary>Voltage at a surplus.</summary>
    public double VoltsAt(double surplus)
    {
        (double amperes, double volts, double ohms) = _pieces[PieceAt(surplus)];
        return ohms == 0 || surplus == amperes ? volts : volts + ohms * (surplus - amperes);
    }

    /// <summary>The part of the battery's characteristic that a voltage at its terminals lies on: 0 discharging, 1
    /// charging, 2 above the held voltage as far as the regulator's rises, 3 beyond the regulator.</summary>
    public int BatteryPieceAt(double volts) =>
        volts < OpenVolts ? 0
        : volts <= HoldVolts ? 1
        : volts <= _topVolts ? 2
        : 3;

    /// <summary>The battery on one part of its characteristic, as a source behind a resistance: by itself, or together
    /// with a shunt regulator at its terminals.</summary>
    public Load BatteryOn(int piece)
    {
        double ohms = Math.Max(LeastOhms, BatteryOhms);
        return piece switch
        {
            2 when IsAtBattery && !IsSeries => Load.Battery(HoldVolts - AcceptedAmperes * _slopeOhms, _slopeOhms),
            3 when IsAtBattery && !IsSeries => Load.Battery(
                _topVolts - (AcceptedAmperes + _limitAmperes) * ohms,
                ohms
            ),
            0 => Load.Battery(OpenVolts, ohms),
            1 => Load.Battery(
                OpenVolts,
                AcceptedAmperes > 0 ? Math.Max(LeastOhms, (HoldVolts - OpenVolts) / AcceptedAmperes) : MostOhms
            ),
            2 when AcceptedAmperes > 0 => Load.Fixed(AcceptedAmperes),
            2 => Load.Battery(HoldVolts, MostOhms),
            _ => Load.Battery(_topVolts - AcceptedAmperes * ohms, ohms),
        };
    }

    /// <summary>Whether the regulator by itself holds its voltage exactly at a surplus, zero or more.</summary>
    public bool Keeps(double surplus) =>
        IsSeries || !IsAtBattery && surplus <= _limitAmperes && _pieces[2].Ohms == 0;

    /// <summary>Current into a regulator where the generator joins, above the held voltage, where it does not keep it
    /// exactly.</summary>
    public double RegulatorAmperesAt(double volts)
    {
        if (IsAtBattery)
            return 0;
        double above = volts - HoldVolts,
            ohms = _pieces[2].Ohms;
        return above <= 0 ? 0
            : ohms == 0 ? _limitAmperes
            : Math.Min(_limitAmperes, above / ohms);
    }

    /// <summary>What the regulator by itself takes of a surplus at a voltage, and what is not generated.</summary>
    public (double Regulator, double Withheld) Take(double surplus, double volts)
    {
        if (surplus <= 0 || volts < HoldVolts)
            return (0, 0);
        return IsSeries
            ? (0, surplus)
            : (Math.Min(surplus, _limitAmperes), 0);
    }

    /// <summary>What becomes of a surplus: into the battery, into the regulator, and not generated.</summary>
    public (double Battery, double Regulator, double Withheld) Split(double surplus)
    {
        double rest = surplus - AcceptedAmperes;
        if (rest <= 0)
            return (surplus, 0, 0);
        if (IsSeries)
            return (AcceptedAmperes, 0, rest);
        double taken = Math.Min(rest, _limitAmperes);
        return (surplus - taken, taken, 0);
    }
}
