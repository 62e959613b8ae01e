using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Network;

/// <summary>Settings that differ in dead contacts only share a solution; it must be the one each has by
/// itself.</summary>
public class SameLivePartTests
{
    [Theory]
    [InlineData("valley-twin")]
    [InlineData("chapel-single")]
    [InlineData("fell-lightweight")]
    public void A_shared_solution_is_that_of_a_solver_of_its_own(string name)
    {
        Bike bike = Lighting.Calc.BikeLists.Read(CliProcess.Bike(name)).Value.Bike;
        var network = new HarnessNetwork(bike);
        HarnessSolver shared = network.CreateSolver();
        foreach (Setting setting in SettingEnumeration.Of(bike, Condition.Always))
        {
            OperatingPoint one = shared.Solve(setting),
                own = new HarnessNetwork(bike).CreateSolver().Solve(setting);
            Assert.Equal(setting, one.Setting);
            Assert.Equal(own.TotalCurrent.Amperes, one.TotalCurrent.Amperes, 1e-9);
            Assert.Equal(own.Points.Select(p => p.Point), one.Points.Select(p => p.Point));
            Assert.All(
                own.Points.Zip(one.Points),
                p => Assert.Equal(p.First.Voltage.Volts, p.Second.Voltage.Volts, 1e-9)
            );
            Assert.All(
                own.Lamps.Zip(one.Lamps),
                l => Assert.Equal(l.First.Current.Amperes, l.Second.Current.Amperes, 1e-9)
            );
            Assert.All(
                own.Runs.Zip(one.Runs),
                r => Assert.Equal(r.First.Current.Amperes, r.Second.Current.Amperes, 1e-9)
            );
            Assert.Equal(own.Contacts.Select(c => c.Closed), one.Contacts.Select(c => c.Closed));
            Assert.All(
                own.Contacts.Zip(one.Contacts),
                c => Assert.Equal(c.First.Current.Amperes, c.Second.Current.Amperes, 1e-9)
            );
        }
    }

    [Fact]
    public void A_changed_value_is_not_answered_with_the_solution_before()
    {
        Bike bike = Lighting.Calc.BikeLists.Read(CliProcess.Bike("valley-twin")).Value.Bike;
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        Setting setting = SettingEnumeration.Held(bike, Condition.Parse("ignition=on; lights=main; dip=high"));
        double Amperes() => solver.Solve(setting).TotalCurrent.Amperes;
        var seen = new List<double> { Amperes() };
        Changed(() => solver.SetSupply(UnitsNet.ElectricPotential.FromVolts(12)));
        Changed(() => solver.SetBatteryResistance(UnitsNet.ElectricResistance.FromMilliohms(50)));
        Changed(() =>
            solver.SetRun(0, UnitsNet.ElectricResistance.FromMilliohms(50), UnitsNet.ElectricResistance.Zero)
        );
        Changed(() => solver.SetContact(0, UnitsNet.ElectricResistance.FromMilliohms(50)));
        Changed(() => solver.SetFuse(0, UnitsNet.ElectricResistance.FromMilliohms(50)));
        Changed(() => solver.SetLamp(1, bike.Lamps[2].Specification));

        void Changed(Action change)
        {
            change();
            double now = Amperes();
            Assert.DoesNotContain(seen, s => Math.Abs(s - now) < 1e-6);
            seen.Add(now);
        }
    }
}
