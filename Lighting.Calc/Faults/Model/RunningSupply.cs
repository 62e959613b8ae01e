using System.Collections.Concurrent;
using System.Globalization;
using MathNet.Numerics.RootFinding;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Generator, regulator and battery of a bike with its engine at one speed, with what faults change of
/// them.</summary>
/// <remarks>The circuit is that of <see cref="RunningEngine"/>. Safe to share between threads.</remarks>
internal sealed class RunningSupply
{
    // Charging is tested at the slowest listed speed that gives this share of the largest output: common practice, no
    // source.
    private const double NearlyAll = 0.8;

    // Of a current: slopes are taken of it.
    private const double Accuracy = 1e-14;

    private static readonly ChargingOptions s_options = ChargingOptions.Default;

    private readonly Bike _bike;
    private readonly OutputModel _output;
    private readonly bool _holds;
    private readonly ConcurrentDictionary<(long Windings, double Rpm), GeneratorOutput> _outputs = new();

    private RunningSupply(Bike bike, OutputModel output, double rpm)
    {
        (_bike, _output, Rpm) = (bike, output, rpm);
        BatteryAndRegulator bus = BatteryAndRegulator.Of(bike, s_options);
        HeldVolts = bus.HoldVolts;
        _holds = bus.Kind != RegulatorKind.None;
    }

    /// <summary>Engine speed.</summary>
    public double Rpm { get; }

    /// <summary>Voltage that the regulator holds.</summary>
    public double HeldVolts { get; }

    /// <exception cref="ArgumentException">The speed is outside the charging list.</exception>
    public static RunningSupply Of(Bike bike, double? rpm)
    {
        OutputModel output = OutputModel.Of(bike, s_options);
        double low = output.Curves.Max(c => c.LowestKnownRpm),
            high = output.Curves.Min(c => c.LastRpm);
        double at = rpm ?? TestRpm(output, low, high);
        if (!(at > 0 && at >= low && at <= high))
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{at:0.###} rpm is outside the charging list, which states the output from "
                        + $"{low:0.###} to {high:0.###} rpm."
                )
            );
        return new RunningSupply(bike, output, at);
    }

    /// <summary>What the generator gives at the battery in a setting.</summary>
    /// <param name="setting">The setting.</param>
    /// <param name="harness">The faults.</param>
    /// <param name="speedFactor">Engine speed over that of the test.</param>
    public GeneratorOutput Generator(Setting setting, FaultyHarness harness, double speedFactor)
    {
        double rpm = Rpm * speedFactor * harness.MagnetShare;
        GeneratorOutput sound = _outputs.GetOrAdd(
            (_output.WindingsIn(setting), rpm),
            _ => _output.GeneratorNear(rpm, setting)
        );
        double share = harness.OutputShare,
            lead = harness.ChargingLeadOhms;
        if (share == 0 || double.IsInfinity(lead))
            return new GeneratorOutput(rpm, _ => 0);
        if (share == 1 && lead == 0)
            return sound;
        if (lead == 0)
            return new GeneratorOutput(rpm, v => share * sound.AmperesAt(v));
        double held = _holds ? HeldVolts * harness.HeldShare : double.PositiveInfinity;
        return new GeneratorOutput(rpm, v => BehindLead(a => share * sound.AmperesAt(a), lead, held, v));
    }

    /// <summary>Battery and regulator.</summary>
    /// <param name="harness">The faults.</param>
    /// <param name="supplyFactor">Voltage of battery and regulator over that of the lists.</param>
    public BatteryAndRegulator Bus(FaultyHarness harness, double supplyFactor) =>
        BatteryAndRegulator.Of(
            _bike,
            s_options,
            new BusChange(
                supplyFactor * harness.VoltageShare,
                Math.Min(FaultCircuit.OpenOhms, harness.SourceOhms),
                supplyFactor * harness.HeldShare,
                harness.VoltageShare < 1 ? StateOfCharge(harness.VoltageShare) : null
            )
        );

    // A voltage below the table is that of an empty battery.
    private Ratio StateOfCharge(double share) =>
        LeadAcid.StateOfCharge(_bike.BatteryVoltage * share, _bike.SystemVoltage) ?? Ratio.Zero;

    // The regulator is at the generator and holds the voltage there: I = I(V + I·R), no more than reaches it.
    private static double BehindLead(Func<double, double> amperesAt, double ohms, double held, double volts)
    {
        double most = Math.Min(amperesAt(volts), Math.Max(0, held - volts) / ohms);
        return amperesAt(volts + most * ohms) >= most
            ? most
            : Brent.FindRoot(a => amperesAt(volts + a * ohms) - a, 0, most, Accuracy * most, 200);
    }

    private static double TestRpm(OutputModel output, double low, double high)
    {
        double[] speeds = [.. output.Curves.SelectMany(c => c.KnotsRpm).Where(n => n > 0 && n >= low && n <= high)];
        if (speeds.Length == 0)
            return high;
        double most = speeds.Max(Given);
        return speeds.Where(n => Given(n) >= NearlyAll * most).Min();

        double Given(double rpm) => output.Curves.Sum(c => c.AmperesNear(rpm));
    }
}
