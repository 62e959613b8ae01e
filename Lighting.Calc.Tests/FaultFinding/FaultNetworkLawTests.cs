using UnitsNet;

namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>The circuit with everything in it that can go wrong, against the laws and against the plain
/// harness.</summary>
public class FaultNetworkLawTests
{
    private const double ResidualAmperes = 2e-9;

    [Theory]
    [MemberData(nameof(DemoBikes.Names), MemberType = typeof(DemoBikes))]
    public void Every_single_fault_keeps_Kirchhoffs_current_law_at_every_point(string name)
    {
        FaultFinder finder = DemoBikes.Finder(name);
        FaultCircuit circuit = finder.Model.Circuit;
        var solver = new FaultSolver(circuit, finder.Model.Draws);
        foreach (Setting setting in finder.Settings)
            foreach (FaultMember member in finder.Model.Members)
            {
                solver.Set(setting, member);
                solver.Solve();
                double[] leaving = new double[circuit.Circuit.NodeCount];
                for (int c = 0; c < circuit.Circuit.ConductorCount; c++)
                {
                    leaving[circuit.Circuit.ConductorA[c]] += solver.Circuit.ConductorAmperes(c);
                    leaving[circuit.Circuit.ConductorB[c]] -= solver.Circuit.ConductorAmperes(c);
                }

                for (int l = 0; l < circuit.Circuit.LoadCount; l++)
                {
                    leaving[circuit.Circuit.LoadFeed[l]] += solver.Circuit.LoadAmperes(l);
                    leaving[circuit.Circuit.LoadReturn[l]] -= solver.Circuit.LoadAmperes(l);
                }

                leaving[circuit.Circuit.Plus] -= solver.Circuit.SourceAmperes;
                leaving[circuit.Circuit.Minus] += solver.Circuit.SourceAmperes;
                Assert.All(
                    leaving,
                    amperes =>
                        Assert.True(
                            Math.Abs(amperes) <= ResidualAmperes,
                            $"{member.Family.Kind} {member.Family.Part} {member.Case.Ohms} in {setting}: {amperes}"
                        )
                );
            }
    }

    [Theory]
    [MemberData(nameof(DemoBikes.Names), MemberType = typeof(DemoBikes))]
    public void Without_a_fault_it_reads_what_the_plain_harness_reads(string name)
    {
        FaultFinder finder = DemoBikes.Finder(name);
        var plain = new HealthyBike(finder);
        foreach (Setting setting in finder.Settings)
        {
            Dictionary<string, double> expected = plain
                .In(setting)
                .Points.ToDictionary(p => p.Point, p => p.Voltage.Volts);
            for (int p = 0; p < finder.Model.Circuit.Points.Length; p++)
                Assert.Equal(
                    expected[finder.Model.Circuit.Points[p]],
                    finder
                        .Model.Of(new TestPlace(setting, Instrument.Meter, p), TestContext.Current.CancellationToken)
                        .Value[0],
                    0.01
                );
        }
    }

    [Fact]
    public void A_poor_joint_reads_what_the_plain_harness_reads_with_that_joint()
    {
        FaultFinder finder = DemoBikes.Finder("valley-twin");
        HarnessSolver plain = new HarnessNetwork(finder.Bike).CreateSolver();
        plain.SetSupply(finder.Bike.BatteryVoltage);
        for (int r = 0; r < finder.Bike.Runs.Length; r++)
        {
            Run run = finder.Bike.Runs[r];
            int member = finder
                .Model.Members.ToList()
                .FindIndex(m =>
                    m.Family.Kind is FaultKind.HighResistanceJoint or FaultKind.HighResistanceEarth
                    && m.Family.Part == r
                    && m.Case.Ohms > 1
                );
            double ohms = finder.Model.Members[member].Case.Ohms;
            plain.SetRun(
                r,
                run.WireResistance(finder.Bike.WireTemperature),
                run.TotalJointResistance + ElectricResistance.FromOhms(ohms)
            );
            foreach (Setting setting in finder.Settings)
                foreach (NodeVoltage point in plain.Solve(setting).Points)
                    Assert.Equal(
                        point.Voltage.Volts,
                        finder
                            .Model.Of(
                                new TestPlace(setting, Instrument.Meter, finder.Model.Circuit.NodeOf(point.Point)),
                                TestContext.Current.CancellationToken
                            )
                            .Value[member],
                        0.01
                    );
            plain.SetRun(r, run.WireResistance(finder.Bike.WireTemperature), run.TotalJointResistance);
        }
    }

    [Fact]
    public void A_dead_lamp_beside_a_wrong_one_draws_no_current_live_or_cold()
    {
        FaultFinder finder = DemoBikes.Finder("valley-twin");
        int pair = finder.Bike.Lamps.Select(l => l.Lamp).ToList().IndexOf("left indicators");
        FaultMember dead = finder.Model.Members.First(m =>
            m.Family is LampDead && m.Family.Part == pair && m.Case.Factor == 1
        );
        FaultMember wrong = finder.Model.Members.First(m => m.Family is WrongLamp && m.Family.Part == pair);
        Bike single = finder.Bike with
        {
            Lamps =
            [
                .. finder.Bike.Lamps.Select(
                    (l, i) => i == pair ? l with { Specification = wrong.Case.Lamp!, Quantity = 1 } : l
                ),
            ],
        };
        Setting setting = SettingEnumeration.Held(single, Condition.Parse("ignition=on; indicators=left"));
        HarnessSolver plain = new HarnessNetwork(single).CreateSolver();
        plain.SetSupply(single.BatteryVoltage);
        var solver = new FaultSolver(finder.Model.Circuit, finder.Model.Draws);
        solver.Set(setting, dead, wrong);
        solver.Solve();
        Assert.Equal(plain.Solve(setting).Lamps[pair].Voltage.Volts, solver.LampVolts(pair), 1e-3);
        ExpectedOhms expected = ExpectedReadings
            .Calculate(single, cancellationToken: TestContext.Current.CancellationToken)
            .Ohms.Single(o => o.Part == "left indicators");
        Assert.Equal(
            expected.InCircuit!.Value.Ohms,
            new ColdNetwork(finder.Model.Circuit)
                .Set(finder.Model.AllOff, dead, wrong)
                .Across(finder.Model.Parts[pair]),
            1e-6
        );
    }

    [Fact]
    public void Behind_an_LED_that_blocks_the_meters_own_load_halves_the_volts()
    {
        // Ground open: the LED's leak of 10 MΩ and the meter's 10 MΩ divide the battery's volts.
        Bike twin = DemoBikes.Load("valley-twin");
        var led = Calc.LampSpecification.FromPower(
            Calc.LampType.LedResistor,
            ElectricPotential.FromVolts(13.5),
            Power.FromWatts(1),
            ElectricPotential.FromVolts(13.2)
        );
        Bike bike = twin with
        {
            Lamps = [.. twin.Lamps.Where(l => l.Lamp == "stop lamp").Select(l => l with { Specification = led })],
        };
        var circuit = new FaultCircuit(bike, new FaultFindingOptions());
        var model = new FaultModel(circuit, TestContext.Current.CancellationToken);
        int member = model
            .Members.ToList()
            .FindIndex(m =>
                m.Family.Kind == FaultKind.HighResistanceEarth
                && bike.Runs[m.Family.Part].Name == "rear earth"
                && double.IsInfinity(m.Case.Ohms)
            );
        Setting setting = SettingEnumeration.Held(bike, Condition.Parse("ignition=on; brake=on"));
        float volts = model.Of(
                new TestPlace(setting, Instrument.Meter, circuit.NodeOf("rear return")),
                TestContext.Current.CancellationToken
            )
            .Value[member];
        Assert.Equal(12.65 / 2, volts, 0.05);
    }
}
