namespace Lighting.Calc.Tests.Verdicts;

/// <summary>What a bike is said to do as a whole: suits, does not suit, not judged.</summary>
public class BikeVerdictTests
{
    // 55 + 21 + 5 W at 12 V, every current at the 13.5 V of the default charging voltage by (13.5/12)^0.55.
    private const string Lamps =
        "circuit,lamp,type,volts,watts\nhead,headlamp,filament,12,55\n"
        + "rear,stop,filament,12,21\nrear,tail,filament,12,5\n";

    [Fact]
    public void Lamps_without_a_fuse_are_not_judged_and_what_is_known_is_stated()
    {
        BikeReport report = Check(("lamps.csv", Lamps));
        Assert.Equal(BikeVerdict.NotJudged, report.Verdict);
        double amperes = 81.0 / 12 * Math.Pow(13.5 / 12, 0.55);
        Assert.Equal(
            string.Create(System.Globalization.CultureInfo.InvariantCulture,
                $"no fuse is listed. All lamps together draw {amperes:0.##} A; a 15 A fuse would carry that (limit "
                    + $"11.25 A)."
            ),
            Assert.Single(report.NotJudged)
        );
    }

    [Fact]
    public void A_fuse_that_carries_the_listed_lamps_suits()
    {
        BikeReport report = Check(("lamps.csv", Lamps), ("fuses.csv", "fuse,from,to,rating\nmain,,,15 A\n"));
        Assert.Equal(BikeVerdict.Suits, report.Verdict);
        Assert.Empty(report.NotJudged);
    }

    [Fact]
    public void A_fuse_that_is_overloaded_does_not_suit() =>
        Assert.Equal(
            BikeVerdict.DoesNotSuit,
            Check(("lamps.csv", Lamps), ("fuses.csv", "fuse,from,to,rating\nmain,,,7.5 A\n")).Verdict
        );

    [Fact]
    public void A_fuse_that_no_setting_joins_to_the_battery_is_not_judged()
    {
        BikeReport report = Check(
            Wired([("fuses.csv", "fuse,from,to,rating\nmain,battery +,fused,10 A\nspare,box in,box out,5 A\n")])
        );
        Assert.Equal("not judged", report.Fuses[1].VerdictText);
        Assert.Equal(
            (BikeVerdict.NotJudged, "no setting joins the fuse 'spare' to the battery."),
            (report.Verdict, Assert.Single(report.NotJudged))
        );
    }

    [Fact]
    public void Points_without_runs_are_ignored_and_that_is_noted()
    {
        BikeReport report = Check([.. Wired([]).Where(l => l.Name != "runs.csv")]);
        Assert.Equal(BikeVerdict.Suits, report.Verdict);
        Assert.Contains(
            report.Findings,
            f =>
                f
                    is
                {
                    Severity: Severity.Note,
                    Message: "The points of lamps, switches and fuses are ignored without runs."
                }
        );
        // A fuse whose listed points are the two battery terminals would be a dead short if they counted.
        report = Check([
            .. Wired([("fuses.csv", "fuse,from,to,rating\nmain,battery +,battery -,10 A\n")])
                .Where(l => l.Name != "runs.csv"),
        ]);
        Assert.Equal(BikeVerdict.Suits, report.Verdict);
    }

    [Fact]
    public void A_blank_lit_when_claims_nothing_of_a_wired_bike()
    {
        (string, string)[] lists = Wired([
            ("lamps.csv", "circuit,lamp,type,volts,watts,feed,return\nhead,headlamp,filament,12,55,lit,frame\n"),
        ]);
        Assert.DoesNotContain(Check(lists).Findings, f => f.Subject == "headlamp");
    }

    [Fact]
    public void Either_of_two_switches_in_parallel_lights_the_stop_lamp()
    {
        (string, string)[] lists = Wired([
            (
                "lamps.csv",
                "circuit,lamp,type,volts,watts,lit when,feed,return\nrear,stop,filament,12,21,front brake=on or rear "
                    + "brake=on,lit,frame\n"
            ),
            ("switches.csv", "switch,from,to,closed in\nfront brake,in,lit,on\nrear brake,in,lit,on\n"),
        ]);
        Assert.DoesNotContain(Check(lists).Findings, f => f.Subject == "stop");
        Assert.Contains(
            Check([
                .. lists.Select(l =>
                    l.Item1 == "lamps.csv"
                        ? (l.Item1, l.Item2.Replace(" or rear brake=on", "", StringComparison.Ordinal))
                        : l
                ),
            ]).Findings,
            f =>
                f.Subject == "stop"
                && f.Message.StartsWith("'lit when' says dark in the setting 'rear brake=on'", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_dip_switch_without_off_has_no_such_setting()
    {
        (string, string)[] lists = Wired([
            (
                "lamps.csv",
                "circuit,lamp,type,volts,watts,lit when,feed,return\nhead,low,filament,12,55,dip=low,low "
                    + "line,frame\nhead,high,filament,12,60,dip=high,high line,frame\n"
            ),
            ("switches.csv", "switch,from,to,closed in,has off\ndip,in,low line,low,\ndip,in,high line,high,no\n"),
        ]);
        BikeReport report = Check(lists);
        Assert.Equal(["dip=low", "dip=high"], report.Settings.Select(s => s.Setting.ToString()));
        Assert.Equal(BikeVerdict.Suits, report.Verdict);
    }

    [Fact]
    public void A_condition_that_names_off_of_a_switch_without_it_is_a_fault_of_the_list()
    {
        ListResult<BikeLists> read = Read(
            Wired([
                (
                    "lamps.csv",
                    "circuit,lamp,type,volts,watts,lit when,feed,return\nhead,low,filament,12,55,lights=off,lit,frame\n"
                ),
                ("switches.csv", "switch,from,to,closed in,has off\nlights,in,lit,on,no\n"),
            ])
        );
        Assert.Contains(
            "'off' is not a position of the switch 'lights'",
            Assert.Single(read.Faults).Message,
            StringComparison.Ordinal
        );
    }

    // The resistor takes 0.9 of the voltage of a 2 W lamp that hangs behind it, and nearly none of a 55 W lamp's.
    [Theory]
    [InlineData("3 ohm", true)]
    [InlineData("3000 ohm", false)]
    public void A_lamp_behind_a_ballast_resistor_is_lit_when_enough_voltage_reaches_it(string ballast, bool isLit)
    {
        double watts = 144 / double.Parse(ballast.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        (string, string)[] lists = Wired([
            (
                "lamps.csv",
                string.Create(System.Globalization.CultureInfo.InvariantCulture,
                    $"circuit,lamp,type,volts,watts,lit when,feed,return\n"
                        + $"dash,tell-tale,filament,12,2,lights=on,behind,frame\n"
                        + $"dash,ballast,resistor,12,{watts},,lit,behind\n"
                )
            ),
        ]);
        BikeReport report = Check(lists);
        Assert.Equal(
            isLit ? Severity.Note : Severity.Fault,
            report
                .Findings.First(f =>
                    f.Subject == "tell-tale"
                    && f.Message.Contains("lamp", StringComparison.Ordinal)
                        | f.Message.Contains("dark", StringComparison.Ordinal)
                )
                .Severity
        );
    }

    private static (string Name, string Text)[] Wired((string Name, string Text)[] others)
    {
        (string Name, string Text)[] lists =
        [
            (
                "lamps.csv",
                "circuit,lamp,type,volts,watts,lit when,feed,return\nhead,headlamp,filament,12,55,lights=on,lit,frame\n"
            ),
            ("runs.csv", "run,from,to,wire,length\nfeed,fused,in,2.5 mm2,0.5\nearth,frame,battery -,2.5 mm2,0.3\n"),
            ("switches.csv", "switch,from,to,closed in\nlights,in,lit,on\n"),
            ("fuses.csv", "fuse,from,to,rating\nmain,battery +,fused,10 A\n"),
        ];
        return [.. lists.Where(l => others.All(o => o.Name != l.Name)), .. others];
    }

    private static ListResult<BikeLists> Read((string Name, string Text)[] lists) =>
        BikeLists.Read(lists.Aggregate(ListSource.Empty, (source, list) => source.With(list.Name, list.Text)));

    private static BikeReport Check(params (string Name, string Text)[] lists)
    {
        ListResult<BikeLists> read = Read(lists);
        Assert.Empty(read.Faults);
        return BikeCheck.Evaluate(read.Value.Bike, cancellationToken: TestContext.Current.CancellationToken);
    }
}
