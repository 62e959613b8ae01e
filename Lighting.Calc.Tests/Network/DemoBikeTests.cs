using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Network;

/// <summary>Every demo bike in every setting: Kirchhoff, power balance, ledgers.</summary>
public class DemoBikeTests
{
    public static TheoryData<string> Bikes =>
        [
            .. Directory
                .GetDirectories(CliProcess.Bike(""))
                .Select(d => Path.GetFileName(d))
                .Order(StringComparer.Ordinal),
        ];

    [Theory]
    [MemberData(nameof(Bikes))]
    public void Currents_into_every_point_sum_to_zero(string name)
    {
        foreach ((Bike bike, OperatingPoint point) in Solved(name))
        {
            var sums = new Dictionary<string, double>(StringComparer.OrdinalIgnoreCase);
            void Flow(string from, string to, double amperes)
            {
                sums[from] = sums.GetValueOrDefault(from) - amperes;
                sums[to] = sums.GetValueOrDefault(to) + amperes;
            }

            double earth = bike.Earth == Earth.Negative ? 1 : -1;
            Flow(Bike.BatteryMinus, Bike.BatteryPlus, point.TotalCurrent.Amperes);
            foreach (RunState run in point.Runs)
                Flow(run.Run.From, run.Run.To, run.Current.Amperes);
            foreach (ContactState contact in point.Contacts)
                Flow(contact.Contact.From, contact.Contact.To, contact.Current.Amperes);
            foreach (LampState lamp in point.Lamps)
                Flow(lamp.Lamp.Feed!, lamp.Lamp.Return!, earth * lamp.Current.Amperes);
            foreach (FuseState fuse in point.Fuses)
                Flow(fuse.Fuse.From!, fuse.Fuse.To!, earth * fuse.Current.Amperes);
            Assert.All(sums, s => Assert.True(Math.Abs(s.Value) <= 1e-9, $"{s.Key}: {s.Value} A in {point.Setting}"));
        }
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public void Power_of_the_source_is_that_of_the_lamps_and_the_losses(string name)
    {
        foreach ((_, OperatingPoint point) in Solved(name))
        {
            double source = point.SupplyVoltage.Volts * point.TotalCurrent.Amperes;
            double losses =
                point.BatteryDrop.Volts * point.TotalCurrent.Amperes
                + point.Runs.Sum(r => (r.WireDrop + r.JointDrop).Volts * r.Current.Amperes)
                + point.Contacts.Sum(c => c.Drop.Volts * c.Current.Amperes)
                + point.Fuses.Sum(f => f.Drop.Volts * f.Current.Amperes);
            double lamps = point.Lamps.Sum(l => (double)l.Power.Watts);
            Assert.True(
                Math.Abs(source - losses - lamps) <= 1e-9 * Math.Max(1, source),
                $"{source} W in, {losses + lamps} W out in {point.Setting}"
            );
        }
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public void Every_ledger_adds_up_to_the_source_volts(string name)
    {
        foreach ((Bike bike, OperatingPoint point) in Solved(name))
            for (int lamp = 0; lamp < bike.Lamps.Length; lamp++)
                if (VoltageDropAnalysis.Breakdown(bike, point, lamp) is { } ledger)
                    Assert.Equal(point.SupplyVoltage.Volts, (ledger.TotalDrop + ledger.Lamp.Voltage).Volts, 1e-9);
    }

    [Theory]
    [MemberData(nameof(Bikes))]
    public void The_wiring_agrees_with_lit_when(string name)
    {
        Bike bike = BikeLists.Read(CliProcess.Bike(name)).Value.Bike;
        Assert.DoesNotContain(
            Benches.Review(bike),
            f => f.Severity != Severity.Note
        );
    }

    private static IEnumerable<(Bike Bike, OperatingPoint Point)> Solved(string name)
    {
        Bike bike = BikeLists.Read(CliProcess.Bike(name)).Value.Bike;
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        return SettingEnumeration.Of(bike, Condition.Always).Select(s => (bike, solver.Solve(s)));
    }
}
