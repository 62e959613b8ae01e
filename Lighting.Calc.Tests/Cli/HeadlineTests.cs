using Lighting.Calc.Tests.Rendering;

namespace Lighting.Calc.Tests.Cli;

/// <summary>The verdict of <c>check</c> is understood in ten seconds: at most three lines of 80 columns, the gravest
/// cause first.</summary>
public class HeadlineTests
{
    [Theory]
    [InlineData("✔ Suits.", "valley-twin")]
    [InlineData("✖ Does not suit: 1 cause.", "chapel-single", "--fuse", "5A")]
    [InlineData("✔ Suits.", "fell-lightweight")]
    [InlineData("✖ Does not suit: ", "valley-twin", "--fuse", "5A")]
    [InlineData("✖ Does not suit: ", "valley-twin", "--fuse", "40A")]
    public async Task It_has_at_most_three_lines(string first, string bike, params string[] options)
    {
        string text = await Pages.Text(["check", CliProcess.Bike(bike), .. options]);
        string[] lines = text[
            (text.IndexOf('\n', StringComparison.Ordinal) + 1)..text.IndexOf("\n\n", StringComparison.Ordinal)
        ]
            .Split('\n');
        Assert.StartsWith(first, lines[0], StringComparison.Ordinal);
        Assert.InRange(lines.Length, 2, 3);
        Assert.All(lines, l => Assert.True(l.Length <= 80, l));
        Assert.All(lines, l => Assert.DoesNotContain("…", l, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_list_without_a_fuse_is_not_judged()
    {
        string text = await Pages.Text("check", Path.Combine(CliProcess.Root, "shared", "bulb-list.csv"));
        Assert.StartsWith(
            "Check\n! Not judged: no fuse is listed.\nAll lamps together draw 6.94 A; a 15 A fuse would carry that "
                + "(limit 11.25 A).\nGive the fuse with --fuse",
            text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void One_cause_holds_every_part_it_concerns_and_a_fuse_comes_first()
    {
        Bike single = BikeLists.Read(CliProcess.Bike("chapel-single")).Value.Bike;
        BikeReport report = BikeCheck.Evaluate(
            single with
            {
                AllowedDrop = UnitsNet.Ratio.FromPercent(8),
                Fuses = [single.Fuses[0] with { Rating = UnitsNet.ElectricCurrent.FromAmperes(5) }],
            },
            new CheckOptions { Engine = EngineState.Off, Supply = single.ChargingVoltage },
            cancellationToken: TestContext.Current.CancellationToken
        );
        double drop = report
            .WorstDrops.Single(d => d.Lamp.Lamp.Lamp == "stop lamp")
            .Lamp.Drop!.Value.Percent;
        Assert.Equal(
            [
                "Main fuse 5 A, overloaded: 6.61 A (limit 3.75), peak 12.73 A (limit 5).",
                FormattableString.Invariant($"Voltage drop too large: stop lamp ({drop:0.0} %, limit 8 %)."),
            ],
            report.Causes.Select(c => c.Text)
        );
        Assert.Equal(
            report.Findings.Count(f => f.Severity == Severity.Fault),
            report.Causes.Sum(c => c.Findings.Length)
        );
    }

    [Fact]
    public async Task Causes_come_before_what_suits()
    {
        string text = await Pages.Text("check", CliProcess.Bike("chapel-single"), "--fuse", "5A");
        int remedies = text.IndexOf("Causes and remedies", StringComparison.Ordinal),
            suits = text.IndexOf("\nSuits: ", StringComparison.Ordinal);
        Assert.True(remedies > 0 && suits > remedies);
    }
}
