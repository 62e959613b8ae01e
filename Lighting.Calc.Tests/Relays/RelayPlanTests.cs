using System.Collections.Immutable;
using Lighting.Calc.Tests.Cli;
using Lighting.Calc.Tests.WireSizing;

namespace Lighting.Calc.Tests.Relays;

/// <summary>What <c>drop --relay</c> promises: the gain of the solved network, and a bike that <c>check</c> finds no
/// fault of fuse, wire or relay in.</summary>
public sealed class RelayPlanTests
{
    [Theory]
    [InlineData("valley-twin", "headlamp high")]
    [InlineData("valley-twin", "headlamp low")]
    [InlineData("chapel-single", "headlamp high")]
    public void A_relay_of_a_demo_bike_suits_and_gains_what_the_solved_network_shows(string name, string lamp) =>
        Gains(DemoBikeTests.Read(name), lamp);

    [Theory]
    [InlineData("builder", "high")]
    [InlineData("old-twin", "Headlamp high")]
    [InlineData("fenland-six", "headlamp high")]
    [InlineData("postal-trike", "Board stop")]
    public void A_relay_of_a_foreign_bike_suits(string name, string lamp)
    {
        Bike bike = BikeLists.Read($"Lighting.Calc.Tests/ForeignBikes/{name}").Value.Bike;
        Gains(bike, lamp);
    }

    [Fact]
    public void A_lamp_behind_a_relay_that_the_brake_pulls_in_is_on_for_moments()
    {
        Bike bike = BikeLists.Read("Lighting.Calc.Tests/ForeignBikes/postal-trike").Value.Bike;
        Bike planned = RelayPlanner
            .Plan(bike, "Board stop", cancellationToken: TestContext.Current.CancellationToken)
            .Planned!;
        ImmutableArray<bool> momentary = new MomentaryLoads(planned, new FuseOptions()).OnlyMomentary(
            new HarnessGraph(planned)
        );
        Assert.Equal(
            [
                "Board left",
                "Board right",
                "Board stop",
                "Board stop relay",
                "Horn",
                "Left front",
                "Left rear",
                "Right front",
                "Right rear",
                "Stop LED",
            ],
            planned.Lamps.Where((_, i) => momentary[i]).Select(l => l.Lamp).Order()
        );
    }

    [Theory]
    [InlineData("valley-twin", "ignition coils", "")]
    [InlineData("fell-lightweight", "headlamp", "there is no battery")]
    public void A_lamp_without_a_switch_or_battery_gets_none(string name, string lamp, string why)
    {
        Bike bike = DemoBikeTests.Read(name);
        RelayPlan plan = RelayPlanner.Plan(
            bike,
            bike.Lamps.FirstOrDefault(l => Name.Equal(l.Lamp, lamp))?.Lamp ?? bike.Lamps[0].Lamp,
            cancellationToken: TestContext.Current.CancellationToken
        );
        if (why.Length > 0)
        {
            Assert.False(plan.IsFeasible);
            Assert.Contains(why, plan.Explanation, StringComparison.Ordinal);
        }
        else
        {
            Assert.True(plan.IsFeasible, plan.Explanation);
            Assert.Null(plan.LightNow);
        }
    }

    [Fact]
    public void A_lamp_with_a_relay_gets_no_second_one()
    {
        RelayPlan plan = RelayPlanner.Plan(
            DemoBikeTests.Read("valley-twin"),
            "headlamp high",
            cancellationToken: TestContext.Current.CancellationToken
        );
        Assert.Contains(
            "a relay feeds it already",
            RelayPlanner
                .Plan(plan.Planned!, "headlamp high", cancellationToken: TestContext.Current.CancellationToken)
                .Explanation,
            StringComparison.Ordinal
        );
    }

    [Fact]
    [Trait("time", "long")]
    public async Task Drop_writes_the_bike_with_a_relay_and_every_command_reads_it()
    {
        using var folder = new TemporaryFolder();
        string planned = Path.Combine(folder.Path, "planned");
        CliResult drop = await InProcess.Run(
            "drop",
            CliProcess.Bike("valley-twin"),
            "--relay",
            "headlamp high",
            "--lists",
            planned
        );
        Assert.Equal(0, drop.ExitCode);
        Assert.Contains("Terminals of the relay", drop.Output, StringComparison.Ordinal);
        Assert.All(drop.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.Contains(
            "headlamp high relay 30",
            await File.ReadAllTextAsync(Path.Combine(planned, "relays.csv"), TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );
        Assert.Equal(0, (await InProcess.Run("check", planned)).ExitCode);
        foreach (
            string command in new[]
            {
                "load",
                "fuse",
                "drop",
                "wire",
                "charging",
                "readings",
                "diagram",
                "loom",
                "faults",
            }
        )
            Assert.Equal("", (await InProcess.Run(command, planned)).Errors);
        Assert.Contains(
            "headlamp high relay",
            (await InProcess.Run("diagram", planned)).Output,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "headlamp high relay",
            (await InProcess.Run("readings", planned)).Output,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Drop_gives_a_relay_as_csv_too()
    {
        CliResult drop = await InProcess.Run(
            "drop",
            CliProcess.Bike("valley-twin"),
            "--relay",
            "headlamp high",
            "--format",
            "csv"
        );
        Assert.Equal(0, drop.ExitCode);
        string[] lines = drop.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.StartsWith("lamp,voltageNowV,", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("headlamp high,", Assert.Single(lines[1..]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--relay", "hedlamp")]
    [InlineData("--lists", "x")]
    public async Task Drop_refuses_what_is_no_lamp_and_lists_without_a_relay(string option, string value)
    {
        CliResult result = await InProcess.Run("drop", CliProcess.Bike("valley-twin"), option, value);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("--relay", result.Errors, StringComparison.Ordinal);
    }

    private static void Gains(Bike bike, string lamp)
    {
        RelayPlan plan = RelayPlanner.Plan(bike, lamp, cancellationToken: TestContext.Current.CancellationToken);
        Assert.True(plan.IsFeasible, plan.Explanation);
        Assert.True(plan.VoltageThen > plan.VoltageNow);
        int index = bike.Lamps.IndexOf(plan.Lamp);
        // As written and read again, and solved by another caller.
        Bike planned = BikeLists
            .Read(
                BikeListsWriter
                    .Write(new BikeLists { Bike = plan.Planned! })
                    .Aggregate(ListSource.Empty, (source, list) => source.With(list.Key, list.Value))
            )
            .Value.Bike;
        BikeReport now = BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken),
            then = BikeCheck.Evaluate(planned, cancellationToken: TestContext.Current.CancellationToken);
        Assert.Equal(At(now).Volts, plan.VoltageNow.Volts, 1e-9);
        Assert.Equal(At(then).Volts, plan.VoltageThen.Volts, 1e-9);
        FuseSuitability fuse = then.Fuses.Single(f => f.Fuse.Name == plan.Fuse!.Name);
        Assert.Equal(FuseVerdict.Suits, fuse.Verdict);
        Assert.All(fuse.Protection.DownstreamRuns, r => Assert.True(r.Rating.Alone >= fuse.Fuse.Rating));
        string[] added = [.. plan.NewRuns.Select(r => r.Name)];
        Assert.DoesNotContain(then.Findings, f =>
            f.Kind
                is FindingKind.RelayChatters
                    or FindingKind.RelayDoesNotPullIn
                    or FindingKind.RelayFedThroughLoad
                    or FindingKind.RelayNeverIn
            || f.Kind
                is FindingKind.WiresRatedBelowFuse
                    or FindingKind.CableKindNeeded
                    or FindingKind.ShortDoesNotClear
                    or FindingKind.RunOverloaded
                    or FindingKind.RunUnfused
                && f.Parts.Append(f.Subject).Any(added.Contains)
        );
        // Nothing else is lit or dark that was not.
        foreach (OperatingPoint point in now.Settings)
            for (int l = 0; l < bike.Lamps.Length; l++)
                Assert.Equal(
                    IsOn(point.Lamps[l]),
                    IsOn(then.Settings.First(p => p.Setting.Equals(point.Setting)).Lamps[l])
                );

        // More than what the voltage between two earths drives through it.
        static bool IsOn(LampState lamp) => Math.Abs(lamp.Voltage.Volts) > 0.5;

        UnitsNet.ElectricPotential At(BikeReport report) =>
            report.Settings.First(p => p.Setting.Equals(plan.Setting)).Lamps[index].Voltage;
    }
}
