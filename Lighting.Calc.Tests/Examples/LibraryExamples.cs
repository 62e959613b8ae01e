#pragma warning disable xUnit1051 // The examples stand as the README shows them, without a cancellation token.
using System.Globalization;
using Lighting.Calc.Tests.Cli;
using UnitsNet;

namespace Lighting.Calc.Tests.Examples;

/// <summary>The library as the README shows it: what stands between the marks is printed there, word for word.</summary>
public class LibraryExamples
{
    private static readonly Bike s_twin = BikeLists.Read(CliProcess.Bike("valley-twin")).Value.Bike;

    // Stands in for the console: what an example prints, line by line.
    private readonly Printed Console = new();

    // The figures an example prints itself are in the culture of whoever runs it.
    public LibraryExamples() => CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;

    [Fact]
    public void Does_the_fuse_still_suit_after_lamps_were_changed()
    {
        ListResult<BikeLists> Read(string path) => BikeLists.Read(Path.Combine(CliProcess.Root, path));
        // README: fuse
        ListResult<BikeLists> lists = Read("shared/bikes/valley-twin");
        if (!lists.TryGetValue(out BikeLists? read))
            throw new InvalidDataException(string.Join('\n', lists.Faults)); // each with file, line, column
        Bike bike = read.Bike;
        BikeReport report = BikeCheck.Evaluate(bike);
        Console.WriteLine(report.Fuses[0].Headline);
        // end
        string line = Assert.Single(Console.Lines);
        Assert.StartsWith("15 A main: suits — 7.16 A continuous ", line, StringComparison.Ordinal);
        Assert.Contains(", limit 11.25 A; 10.46 A at the peak ", line, StringComparison.Ordinal);
    }

    [Fact]
    public void What_wire_for_each_run()
    {
        Bike bike = s_twin;
        // README: wire
        WireSizingResult sizes = HarnessSizing.Size(new HarnessNetwork(bike));
        foreach (RunSizing run in sizes.Runs)
            Console.WriteLine($"{run.Run.Name}: {run.Chosen.Name} ({run.Explanation})");
        // end
        Assert.True(sizes.IsFeasible);
        Assert.Equal(bike.Runs.Length, Console.Lines.Count);
        Assert.All(sizes.Runs, r => Assert.True(r.Rating.Current!.Value.Amperes >= Math.Max(r.WorstCurrent.Amperes, r.Fuse?.Rating.Amperes ?? 0)));
    }

    [Fact]
    public void Why_is_the_headlamp_dim()
    {
        Bike bike = s_twin;
        BikeReport report = BikeCheck.Evaluate(bike);
        // README: dim
        VoltageDropBreakdown headlamp = report.WorstDrops.First(d => d.Lamp.Lamp.Lamp == "headlamp high");
        Console.WriteLine($"{headlamp.TotalDrop.Volts:F2} V lost, {headlamp.LightLost!.Value.Percent:F0} % of the light");
        foreach (RepairBenefit gain in VoltageDropAnalysis.LargestDrops(report.Network, headlamp))
            Console.WriteLine($"{gain.Entry.Part}: {gain.Entry.Voltage.Volts:F2} V");
        // end
        Assert.Equal(4, Console.Lines.Count);
        Assert.Equal(headlamp.SupplyVoltage.Volts, headlamp.TotalDrop.Volts + headlamp.Lamp.Voltage.Volts, 1e-9);
    }

    [Fact]
    public void Will_the_battery_hold_up_at_idle()
    {
        BikeReport report = BikeCheck.Evaluate(s_twin);
        // README: charging
        ChargingBalance worst = report.Charging!.Worst!;
        BalancePoint idle = worst.At(RotationalSpeed.FromRevolutionsPerMinute(1200));
        Console.WriteLine($"at idle {idle.Net?.Amperes:F1} A into the battery; enough from {worst.BreakEven.Speed?.RevolutionsPerMinute:F0} rpm");
        // end
        Assert.Matches(@"\Aat idle -\d+\.\d A into the battery; enough from \d{4} rpm\z", Assert.Single(Console.Lines));
        Assert.Equal(0, worst.At(worst.BreakEven.Speed!.Value).Net!.Value.Amperes, 1e-6);
    }

    [Fact]
    public void What_would_the_6_V_single_be_at_12_V()
    {
        ListResult<BikeLists> Read(string path) => BikeLists.Read(Path.Combine(CliProcess.Root, path));
        // README: conversion
        Bike single = Read("shared/bikes/chapel-single").Value.Bike;
        SystemConversion conversion = SystemConversion.Of(single, ElectricPotential.FromVolts(12));
        BikeComparison atTwelve = BikeComparison.Evaluate(single, conversion.Bike);
        Console.WriteLine($"{atTwelve.Before.Heaviest.TotalCurrent.Amperes:F1} A before, {atTwelve.After.Heaviest.TotalCurrent.Amperes:F1} A after");
        foreach (Finding granted in conversion.Findings)
            Console.WriteLine(granted.Message);
        // end
        Assert.Equal("12.0 A before, 6.9 A after", Console.Lines[0]);
        Assert.Equal(5, Console.Lines.Count);
    }

    [Fact]
    public void What_does_a_change_to_LED_lamps_break()
    {
        Bike bike = s_twin;
        // README: swap
        SwapReport swap = Swap.Evaluate(bike, Swap.ToLed(bike).Replacements);
        Console.WriteLine(swap.After.Fuses[0].Headline);
        foreach (Finding finding in swap.Findings)
            Console.WriteLine($"{finding.Severity}: {finding.Subject}: {finding.Message}");
        // end
        Assert.StartsWith("15 A main: suits", Console.Lines[0], StringComparison.Ordinal);
        Assert.True(swap.After.Heaviest.TotalCurrent < swap.Before.Heaviest.TotalCurrent);
        Assert.Contains(Console.Lines, l => l.Contains("lasher", StringComparison.Ordinal));
    }

    [Fact]
    public void What_should_be_read_and_which_fault_explains_what_was()
    {
        Bike bike = s_twin;
        // README: readings
        ExpectedReadings sheet = ExpectedReadings.Calculate(bike);
        foreach (ExpectedReading point in sheet.Settings[^1].Points)
            Console.WriteLine($"{point.Point}: {point.Voltage.Volts:F2} V, {point.Lowest.Volts:F2} to {point.Highest.Volts:F2} V");

        var finder = new FaultFinder(bike);
        Diagnosis diagnosis = finder.Diagnose(
        [
            new Reading { When = Condition.Parse("ignition=on; brake=on"), Point = "stop feed", Instrument = Instrument.Meter, Voltage = ElectricPotential.FromVolts(9.4) },
        ]);
        Console.WriteLine(diagnosis.Summary);
        Console.WriteLine(diagnosis.Next?.Instruction ?? "no test tells more");
        // end
        Assert.False(diagnosis.NothingFound);
        Assert.Contains(sheet.Settings[^1].Points, p => p.Point == "stop feed");
        Assert.Equal(diagnosis.Summary, Console.Lines[^2]);
    }

    [Fact]
    public void A_harness_built_in_code_is_solved_many_times_with_changed_values()
    {
        // README: build
        var twelve = ElectricPotential.FromVolts(12);
        Bike lantern = Bike.ForSystem(twelve) with
        {
            Lamps = [new FittedLamp { Circuit = "lantern", Lamp = "lantern", Specification = LampSpecification.FromPower(LampType.Filament, twelve, Power.FromWatts(21)), Feed = "lantern feed", Return = "frame" }],
            Switches = [new SwitchContact { Switch = "lights", From = "switch in", To = "switch out", ClosedIn = ["on"] }],
            Fuses = [new Fuse { Name = "main", From = Bike.BatteryPlus, To = "switch in", Rating = ElectricCurrent.FromAmperes(5) }],
            Runs =
            [
                new Run { Name = "feed", From = "switch out", To = "lantern feed", Wire = AmericanWireGauge.Stranded(18), Length = Length.FromMeters(1.5), Joints = 2 },
                new Run { Name = "earth", From = "frame", To = Bike.BatteryMinus, Wire = AmericanWireGauge.Stranded(16), Length = Length.FromMeters(0.5) },
            ],
        };

        HarnessSolver solver = new HarnessNetwork(lantern).CreateSolver(); // one for each thread
        Setting on = SettingEnumeration.Of(lantern, Condition.Parse("lights=on"))[0];
        ElectricResistance wire = lantern.Runs[0].WireResistance(lantern.WireTemperature);
        foreach (int milliohms in new[] { 0, 50, 500 })
        {
            solver.SetRun(0, wire, joints: ElectricResistance.FromMilliohms(milliohms));
            Console.WriteLine($"{milliohms} mΩ in the joints: {solver.Solve(on).Lamps[0].Voltage.Volts:F2} V at the lamp");
        }

        // end
        Assert.Equal(3, Console.Lines.Count);
        double[] volts = [.. Console.Lines.Select(l => double.Parse(l.Split(": ")[1].Split(' ')[0], CultureInfo.InvariantCulture))];
        Assert.True(volts[0] > volts[1] && volts[1] > volts[2] && volts[2] > 10, string.Join(' ', volts));
    }
}
