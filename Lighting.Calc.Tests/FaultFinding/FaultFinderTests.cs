using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;

namespace Lighting.Calc.Tests.FaultFinding;

public class FaultFinderTests
{
    private const string Twin = "valley-twin";
    private const string Riding = "ignition=on; lights=main; dip=high; brake=on; indicators=left";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [MemberData(nameof(DemoBikes.Names), MemberType = typeof(DemoBikes))]
    public void Fault_free_readings_of_a_fault_free_bike_say_nothing_found(string name)
    {
        FaultFinder finder = DemoBikes.Finder(name);
        Diagnosis diagnosis = finder.Diagnose(new HealthyBike(finder).Readings(), Cancellation);
        Assert.True(diagnosis.NothingFound, diagnosis.Summary);
        Assert.StartsWith("No fault found", diagnosis.Summary, StringComparison.Ordinal);
        Assert.Empty(diagnosis.Findings);
        Assert.True(diagnosis.Ranked[0].Probability > 0.5);
    }

    [Theory]
    [MemberData(nameof(DemoBikes.Names), MemberType = typeof(DemoBikes))]
    public void Without_readings_there_is_a_best_first_test_with_its_outcomes(string name)
    {
        Diagnosis diagnosis = DemoBikes.Finder(name).Diagnose([], Cancellation);
        Assert.False(diagnosis.NothingFound);
        Assert.NotNull(diagnosis.Next);
        Assert.True(diagnosis.Next.ExpectedInformationGain > 0.5);
        Assert.True(diagnosis.Next.Outcomes.Length >= 2);
        Assert.InRange(diagnosis.Next.Outcomes.Sum(o => o.Probability), 0.85, 1.0001);
    }

    [Fact]
    public void A_poor_ground_is_found_with_its_ohms_in_a_plain_sentence()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        int rear = Index(finder.Bike.Runs.Select(r => r.Name), "rear earth");
        HarnessSolver solver = Supplied(finder);
        Run run = finder.Bike.Runs[rear];
        solver.SetRun(
            rear,
            run.WireResistance(finder.Bike.WireTemperature),
            run.TotalJointResistance + ElectricResistance.FromOhms(3.1)
        );
        OperatingPoint faulty = solver.Solve(SettingEnumeration.Held(finder.Bike, Condition.Parse(Riding)));
        double Volts(string point) => Math.Round(faulty.Points.Single(p => p.Point == point).Voltage.Volts, 2);
        Diagnosis diagnosis = finder.Diagnose(
            [
                ReadingOf.Meter(Riding, "rear return", Volts("rear return")),
                ReadingOf.Meter(Riding, "frame", Volts("frame")),
                ReadingOf.Meter(Riding, "stop feed", Volts("stop feed")),
            ],
            Cancellation
        );
        Fault found = Assert.Single(diagnosis.Ranked[0].Best.Faults);
        Assert.Equal(FaultKind.HighResistanceEarth, found.Kind);
        Assert.Equal("rear earth", found.Part);
        Assert.InRange(found.Resistance!.Best.Ohms, 2.6, 3.7);
        Assert.True(found.Resistance.Low.Ohms < 3.1 && found.Resistance.High!.Value.Ohms > 3.1);
        Assert.Contains(
            "the earth 'rear earth' (rear return to frame): ",
            diagnosis.Ranked[0].Best.Sentence,
            StringComparison.Ordinal
        );
        Assert.Contains(" V at rear return", diagnosis.Ranked[0].Best.Sentence, StringComparison.Ordinal);
        Assert.Empty(diagnosis.Ranked[0].Conflicting);
    }

    [Fact]
    public void A_test_lamp_shows_the_corroded_joint_that_a_meter_does_not()
    {
        // 300 Ω before an unlit lamp: the meter reads all but 0.4 mV, the test lamp stays dark.
        FaultFinder finder = DemoBikes.Finder(Twin);
        int wire = Index(finder.Bike.Runs.Select(r => r.Name), "high beam wire");
        int ground = Index(finder.Bike.Runs.Select(r => r.Name), "coil wire");
        FaultFamily family = finder.Model.Families.Single(f =>
            f.Kind == FaultKind.HighResistanceJoint
            && f.Part == Index(finder.Bike.Runs.Select(r => r.Name), "flasher feed")
        );
        Assert.True(wire >= 0 && ground >= 0);
        int member = finder.Model.Members.ToList().FindIndex(m => m.Family == family && m.Case.Ohms == 300);
        Setting setting = SettingEnumeration.Held(finder.Bike, Condition.Parse("ignition=on"));
        int point = finder.Model.Circuit.NodeOf("indicator in");
        FaultModel predictions = finder.Model;
        Assert.True(predictions.Of(new TestPlace(setting, Instrument.Meter, point), Cancellation).Value[member] > 12.3);
        Assert.Equal(
            Brightness.Dark,
            LookScale.Of(predictions.Of(new TestPlace(setting, Instrument.TestLamp, point), Cancellation).Value[member])
        );
        Assert.Equal(
            Brightness.Normal,
            LookScale.Of(predictions.Of(new TestPlace(setting, Instrument.TestLamp, point), Cancellation).Value[0])
        );
    }

    [Fact]
    public void The_order_of_readings_does_not_matter()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        Reading[] readings = [.. SomeReadings(finder)];
        Diagnosis forwards = finder.Diagnose(readings, Cancellation),
            backwards = finder.Diagnose(readings.Reverse(), Cancellation);
        Assert.Equal(forwards.Ranked.Select(g => g.Probability), backwards.Ranked.Select(g => g.Probability));
        Assert.Equal(forwards.Summary, backwards.Summary);
        Assert.Equal(forwards.Next!.Place, backwards.Next!.Place);
    }

    [Fact]
    public void Rows_that_were_not_filled_in_change_nothing()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        Reading[] readings = [.. SomeReadings(finder)];
        Reading blank = new()
        {
            When = Condition.Always,
            Point = "battery +",
            Instrument = Instrument.Meter,
        };
        Assert.Equal(
            finder.Diagnose(readings, Cancellation).Summary,
            finder.Diagnose([.. readings, blank], Cancellation).Summary
        );
    }

    [Fact]
    public void Probabilities_of_all_groups_sum_to_one()
    {
        Diagnosis diagnosis = DemoBikes.Finder(Twin).Diagnose(SomeReadings(DemoBikes.Finder(Twin)), Cancellation);
        Assert.InRange(diagnosis.Ranked.Sum(g => g.Probability), 0.95, 1.0000001);
        Assert.All(
            diagnosis.Ranked.Zip(diagnosis.Ranked.Skip(1)),
            p =>
                Assert.True(
                    p.First.Probability >= p.Second.Probability || p.Second.Best.Faults[0].Kind == FaultKind.NotListed
                )
        );
    }

    // The other probe is all that the point is joined to.
    [Fact]
    public void A_point_that_is_joined_to_nothing_follows_the_other_probe()
    {
        FaultFinder finder = DemoBikes.Finder(DemoBikes.TwoFuses);
        FaultModel model = finder.Model;
        int dead = model.FirstOf[
            model.Families.ToList().FindIndex(f => f.Kind == FaultKind.LampDead && f.PartName == "standing ballast")
        ];
        Column column = model.Of(
            new TestPlace(
                SettingEnumeration.Held(finder.Bike, Condition.Parse("light=low")),
                Instrument.Meter,
                model.Circuit.NodeOf("stand line"),
                model.Circuit.NodeOf("position line")
            ),
            Cancellation
        );
        Assert.Equal(0, column.Value[dead], 0.05);
        Assert.Equal(0, column.Value[0], 0.05);
    }

    [Fact]
    public void What_is_wrong_with_readings_is_said_all_at_once()
    {
        Diagnosis diagnosis = DemoBikes
            .Finder(Twin)
            .Diagnose(
                [
                    ReadingOf.Meter(Riding, "tail fed", 12),
                    ReadingOf.Meter(Riding, "tail feed", 15.2),
                    ReadingOf.Meter("ignition=off; lights=full", "tail feed", 12),
                    ReadingOf.Meter("ignitoin=on", "tail feed", 12),
                    ReadingOf.Seen(Riding, "tial lamp", Brightness.Dark),
                    new Reading
                    {
                        When = Condition.Always,
                        Point = "mian",
                        Instrument = Instrument.Ammeter,
                        Current = ElectricCurrent.FromAmperes(2),
                    },
                    ReadingOf.Meter(Riding, "stop feed", 12.1),
                    ReadingOf.Meter(Riding, "stop feed", 3.4),
                    ReadingOf.Meter(Riding, "rear return", -6),
                    ReadingOf.Seen(Riding, "ignition coils", Brightness.Normal),
                ],
                Cancellation
            );
        string[] said = [.. diagnosis.Findings.Select(f => f.Message)];
        Assert.Equal(9, said.Length);
        Assert.Contains(
            said,
            m => m.Contains("no point 'tail fed'; did you mean 'tail feed'?", StringComparison.Ordinal)
        );
        Assert.Contains(
            said,
            m => m.Contains("15.2 V at tail feed is above the battery voltage, 12.65 V", StringComparison.Ordinal)
        );
        Assert.Contains(said, m => m.Contains("no position 'full'", StringComparison.Ordinal));
        Assert.Contains(
            said,
            m => m.Contains("no switch 'ignitoin'; did you mean 'ignition'?", StringComparison.Ordinal)
        );
        Assert.Contains(
            said,
            m => m.Contains("no lamp 'tial lamp'; did you mean 'tail lamp'?", StringComparison.Ordinal)
        );
        Assert.Contains(
            said,
            m => m.Contains("no fuse 'mian' for an ammeter to replace; did you mean 'main'?", StringComparison.Ordinal)
        );
        Assert.Contains(said, m => m.StartsWith("Contradictory readings in the setting", StringComparison.Ordinal));
        Assert.Contains(
            said,
            m => m.Contains("below zero. Connect the black lead to battery -", StringComparison.Ordinal)
        );
        Assert.Contains(said, m => m.Contains("gives no light", StringComparison.Ordinal));
        Assert.Empty(diagnosis.Used);
    }

    [Fact]
    public void Two_faults_are_found_where_no_single_one_explains_the_readings()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        int rear = Index(finder.Bike.Runs.Select(r => r.Name), "rear earth"),
            low = Index(finder.Bike.Runs.Select(r => r.Name), "high beam wire");
        HarnessSolver solver = Supplied(finder);
        foreach (int run in new[] { rear, low })
            solver.SetRun(
                run,
                finder.Bike.Runs[run].WireResistance(finder.Bike.WireTemperature),
                ElectricResistance.FromOhms(2)
            );
        OperatingPoint faulty = solver.Solve(SettingEnumeration.Held(finder.Bike, Condition.Parse(Riding)));
        string[] points =
        [
            "rear return",
            "tail feed",
            "high line",
            "headlamp high feed",
            "headlamp return",
            "stop feed",
        ];
        Diagnosis diagnosis = finder.Diagnose(
            [
                .. points.Select(p =>
                    ReadingOf.Meter(Riding, p, Math.Round(faulty.Points.Single(q => q.Point == p).Voltage.Volts, 2))
                ),
                ReadingOf.Seen(Riding, "headlamp high", Brightness.Dim),
                ReadingOf.Seen(Riding, "stop lamp", Brightness.Dim),
            ],
            Cancellation
        );
        FaultGroup first = diagnosis.Ranked[0];
        Assert.All(first.Best.Faults, f => Assert.InRange(f.Resistance!.Best.Ohms, 1.7, 2.3));
        Assert.Equal(
            ["high beam wire", "rear earth"],
            first.Best.Faults.Select(f => f.Part).Order(StringComparer.Ordinal)
        );
        Assert.Empty(first.Conflicting);
        Assert.Contains(", together with ", first.Best.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_two_faults_are_likelier_than_one_the_next_test_decides_between_pairs()
    {
        // The frame reads 0.7 V with the ignition alone, and the tail lamp is dark besides: its wire, its contact or
        // itself.
        FaultFinder finder = DemoBikes.Finder(Twin);
        Diagnosis diagnosis = finder.Diagnose(
            [
                ReadingOf.Meter("ignition=on", "frame", 0.7),
                ReadingOf.Meter("ignition=on", "battery +", 12.6),
                ReadingOf.Seen("ignition=on; lights=main; dip=high", "tail lamp", Brightness.Dark),
                ReadingOf.Seen("ignition=on; brake=on", "stop lamp", Brightness.Dim),
            ],
            Cancellation
        );
        Assert.Equal(2, diagnosis.Ranked[0].Best.Faults.Length);
        Assert.True(diagnosis.Next!.Outcomes.Length >= 2);
        Assert.All(
            diagnosis.Next.Outcomes.Take(2),
            o => Assert.Contains(", together with ", o.Meaning, StringComparison.Ordinal)
        );
        Assert.NotEqual(diagnosis.Next.Outcomes[0].Faults[0].Sentence, diagnosis.Next.Outcomes[1].Faults[0].Sentence);
        FittedResistance strap = diagnosis.Ranked[0].Best.Faults.Single(f => f.Part == "frame strap").Resistance!;
        Assert.True(strap.Low.Ohms < strap.Best.Ohms && strap.Best.Ohms < strap.High!.Value.Ohms);
    }

    [Fact]
    public void A_reading_that_nothing_explains_is_asked_for_again()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        List<Reading> readings =
        [
            .. new HealthyBike(finder).Readings().Where(r => r.Instrument == Instrument.Meter).Take(12),
        ];
        Assert.DoesNotContain(readings, r => r.Point == "frame" && r.When.ToString().Length == 0);
        Diagnosis diagnosis = finder.Diagnose([.. readings, ReadingOf.Meter("brake=on", "frame", 7.7)], Cancellation);
        Assert.False(diagnosis.NothingFound);
        Assert.Contains(
            diagnosis.Findings,
            f => f.Message.Contains("Repeat this one: read 7.7 V at frame", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_repeated_reading_counts_against_a_blunder_and_is_not_asked_for_again()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        Reading[] normal =
        [
            .. new HealthyBike(finder).Readings().Where(r => r.Instrument == Instrument.Meter).Take(12),
        ];
        Reading odd = ReadingOf.Meter("brake=on", "frame", 7.7);
        Diagnosis once = finder.Diagnose([.. normal, odd], Cancellation);
        Diagnosis thrice = finder.Diagnose([.. normal, odd, odd, odd], Cancellation);
        Assert.True(Unlisted(thrice) > Unlisted(once), $"{Unlisted(thrice)} against {Unlisted(once)}");
        Assert.DoesNotContain(thrice.Findings, f => f.Kind == FindingKind.ReadingNotExplained);
        Assert.Equal(once.Used.Length, thrice.Used.Length);
    }

    [Fact]
    public void Of_three_readings_of_one_place_two_that_agree_outvote_the_third()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        Diagnosis diagnosis = finder.Diagnose(
            [
                ReadingOf.Meter(Riding, "stop feed", 12.1),
                ReadingOf.Meter(Riding, "stop feed", 3.4),
                ReadingOf.Meter(Riding, "stop feed", 12.14),
            ],
            Cancellation
        );
        Assert.Equal(12.12, Assert.Single(diagnosis.Used).Voltage!.Value.Volts, 1e-9);
        Assert.Equal(FindingKind.ReadingOutvoted, Assert.Single(diagnosis.Findings).Kind);
        Assert.Contains("3.4 V at stop feed", diagnosis.Findings[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_no_listed_fault_explains_is_the_headline()
    {
        // Swapped at three ends: each odd reading alone has an explanation, all of them together have none.
        FaultFinder finder = DemoBikes.Finder(Twin);
        Diagnosis diagnosis = finder.Diagnose(
            [
                ReadingOf.Meter(Riding, "battery +", 12.6),
                ReadingOf.Meter(Riding, "rear return", 4.1),
                ReadingOf.Meter(Riding, "frame", 0.02),
                ReadingOf.Meter(Riding, "tail feed", 7.3),
                ReadingOf.Meter(Riding, "stop feed", 2.2),
                ReadingOf.Meter(Riding, "coil feed", 9.1),
                ReadingOf.Meter(Riding, "headlamp high feed", 5.5),
                ReadingOf.Meter(Riding, "left feed", 10.2),
                ReadingOf.Meter("ignition=on", "coil feed", 12.4),
            ],
            Cancellation
        );
        Assert.Equal(FaultKind.NotListed, diagnosis.Ranked[0].Best.Faults[0].Kind);
        Assert.StartsWith("None of the faults I know explains this", diagnosis.Summary, StringComparison.Ordinal);
        Assert.Contains("Left to look at: ", diagnosis.Summary, StringComparison.Ordinal);
        Assert.Null(diagnosis.Repair);
    }

    [Fact]
    public void An_open_that_changes_no_lamp_is_unlikely_beforehand()
    {
        // A second earth of the frame, in parallel to the strap: one of the two may be open for years.
        Bike twin = DemoBikes.Load(Twin);
        Run strap = twin.Runs.Single(r => r.Name == "frame strap");
        var two = new FaultFinder(
            twin with
            {
                Runs = [.. twin.Runs, strap with { Name = "second strap" }],
            },
            cancellationToken: Cancellation
        );
        Assert.True(PriorOfOpen(two, "frame strap") < 0.1 * PriorOfOpen(DemoBikes.Finder(Twin), "frame strap"));

        static double PriorOfOpen(FaultFinder finder, string run)
        {
            FaultModel model = finder.Model;
            int member = model
                .Members.ToList()
                .FindIndex(m => m.Family.PartName == run && double.IsInfinity(m.Case.Ohms));
            return model.PriorOf(member);
        }
    }

    [Fact]
    public void A_named_fault_comes_with_its_repair_and_the_reading_that_proves_it()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        Diagnosis diagnosis = finder.Diagnose(
            [
                ReadingOf.Meter(Riding, "rear return", 2.9),
                ReadingOf.Meter(Riding, "frame", 0.05),
                ReadingOf.Meter(Riding, "stop feed", 12.2),
                ReadingOf.Meter(Riding, "tail feed", 12.2),
                ReadingOf.Seen(Riding, "stop lamp", Brightness.Dim),
            ],
            Cancellation
        );
        Assert.Equal("rear earth", diagnosis.Ranked[0].Best.Faults[0].Part);
        Assert.StartsWith("Clean and tighten the earth 'rear earth'", diagnosis.Repair, StringComparison.Ordinal);
        Assert.Contains("meter from rear return to battery -: 0", diagnosis.Proof, StringComparison.Ordinal);
        Assert.Contains("(read 2.9 V)", diagnosis.Proof, StringComparison.Ordinal);
    }

    private static double Unlisted(Diagnosis diagnosis) =>
        diagnosis.Ranked.Where(g => g.Best.Faults[0].Kind == FaultKind.NotListed).Sum(g => g.Probability);

    [Fact]
    public void A_blown_fuse_is_the_headline_and_the_shorts_of_one_wire_stand_as_one_group()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        Diagnosis diagnosis = finder.Diagnose(
            [
                ReadingOf.Meter(Riding, "fuse in", 12.6),
                ReadingOf.Meter(Riding, "fuse out", 0),
                ReadingOf.Seen(Riding, "tail lamp", Brightness.Dark),
            ],
            Cancellation
        );
        // What is not listed keeps its share.
        Assert.Matches(@"^The fuse 'main' has blown \((9[6-9]|over 99) %\)\.", diagnosis.Summary);
        // No connector parts the two ends of the stop wire; that of the tail wire parts the tail lamp from the panel.
        FaultGroup stop = diagnosis.Ranked.Single(g => g.Alternatives.Any(a => IsShort(a, "stop feed")));
        Assert.Contains(stop.Alternatives, a => IsShort(a, "brake out"));
        Assert.DoesNotContain(stop.Alternatives, a => IsShort(a, "tail feed"));
        FaultGroup rear = diagnosis.Ranked.Single(g => g.Alternatives.Any(a => IsShort(a, "tail feed")));
        Assert.DoesNotContain(rear.Alternatives, a => IsShort(a, "park line"));

        static bool IsShort(FaultExplanation a, string point) =>
            a.Faults[0].Kind == FaultKind.ShortToFrame && a.Faults[0].Part == point;
    }

    [Fact]
    public void A_reversed_LED_is_told_from_a_dead_one_on_the_bench_or_by_a_good_one()
    {
        Bike twin = DemoBikes.Load(Twin);
        var fitted = Calc.LampSpecification.FromPower(
            Calc.LampType.Led,
            ElectricPotential.FromVolts(13.5),
            Power.FromWatts(0.6),
            ElectricPotential.FromVolts(8)
        );
        Bike led = twin with
        {
            Lamps = [.. twin.Lamps.Select(l => l.Lamp == "tail lamp" ? l with { Specification = fitted } : l)],
        };
        var finder = new FaultFinder(led, cancellationToken: Cancellation);
        Reading[] inPlace =
        [
            ReadingOf.Seen(Riding, "tail lamp", Brightness.Dark),
            ReadingOf.Meter(Riding, "tail feed", 12.2),
            ReadingOf.Meter(Riding, "rear return", 0.08),
            ReadingOf.Seen(Riding, "rear return", Brightness.Dark, Instrument.TestLamp),
        ];
        Diagnosis before = finder.Diagnose(inPlace, Cancellation);
        Assert.Equal("tail lamp", before.Next!.Point);
        Assert.Contains(
            before.Next.Instrument,
            new[] { Instrument.Bench, Instrument.BenchReversed, Instrument.GoodLamp }
        );
        Diagnosis after = finder.Diagnose(
            [
                .. inPlace,
                ReadingOf.Seen("", "tail lamp", Brightness.Dark, Instrument.Bench),
                ReadingOf.Seen("", "tail lamp", Brightness.Normal, Instrument.BenchReversed),
            ],
            Cancellation
        );
        Assert.Equal(FaultKind.LedReversed, after.Ranked[0].Best.Faults[0].Kind);
        Assert.True(after.Ranked[0].Probability > 0.85, after.Summary);
    }

    [Fact]
    public void An_ohmmeter_that_shows_its_leads_makes_no_fault()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        Reading Across(string part, double ohms) =>
            new()
            {
                When = Condition.Always,
                Point = part,
                Instrument = Instrument.Ohmmeter,
                Resistance = ElectricResistance.FromOhms(ohms),
            };
        Diagnosis leads = finder.Diagnose(
            [Across("rear earth", 0.2), Across("tail wire", 0.2), Across("main feed", 0.1)],
            Cancellation
        );
        Assert.StartsWith("All readings are normal so far", leads.Summary, StringComparison.Ordinal);
        Assert.True(leads.Ranked[0].Probability < 0.3, leads.Summary);
        Diagnosis poor = finder.Diagnose([Across("rear earth", 1.6)], Cancellation);
        Assert.Equal("rear earth", poor.Ranked[0].Best.Faults[0].Part);
        Assert.True(poor.Ranked[0].Probability > 0.7, poor.Summary);
    }

    [Fact]
    public void No_ammeter_is_advised_while_a_short_is_likely()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        Diagnosis diagnosis = finder.Diagnose(
            [ReadingOf.Meter(Riding, "fuse out", 0), ReadingOf.Meter(Riding, "fuse in", 12.6)],
            Cancellation
        );
        Assert.True(
            diagnosis
                .Ranked.SelectMany(g => g.Alternatives)
                .Where(a => a.Faults[0].Kind == FaultKind.ShortToFrame)
                .Sum(a => a.Probability) > 0.01
        );
        Assert.NotEqual(Instrument.Ammeter, diagnosis.Next?.Instrument);
    }

    [Fact]
    public void Priors_given_by_the_caller_are_used()
    {
        Bike bike = DemoBikes.Load("chapel-single");
        var options = new FaultFindingOptions
        {
            Priors =
            [
                .. FaultFindingOptions.PublishedPriors.Select(p =>
                    p.Fault == "lamp dead" ? p with { Weight = 1e6, Source = "a test" } : p
                ),
            ],
        };
        Diagnosis diagnosis = new FaultFinder(bike, options, Cancellation).Diagnose([], Cancellation);
        Assert.Equal(FaultKind.LampDead, diagnosis.Ranked[0].Best.Faults[0].Kind);
        Assert.Throws<ArgumentException>(() =>
            new FaultFinder(bike, new FaultFindingOptions { Priors = [] }, Cancellation)
        );
    }

    [Fact]
    public void A_bike_without_wires_is_refused_in_plain_words()
    {
        Bike bike = DemoBikes.Load(Twin) with { Runs = [], Switches = [], Fuses = [] };
        string said = Assert
            .Throws<ArgumentException>(() => new FaultFinder(bike, cancellationToken: Cancellation))
            .Message;
        Assert.Contains("runs.csv", said, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ExpectedReadings.Calculate(bike, cancellationToken: Cancellation));
        Assert.Throws<ArgumentException>(() => SymptomText.Read(bike, "tail lamp dark"));
    }

    [Fact]
    public void Work_that_is_cancelled_stops()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => new FaultFinder(DemoBikes.Load(Twin), null, source.Token));
    }

    [Property(MaxTest = 60)]
    public Property A_reading_just_as_a_fault_predicts_is_at_least_as_likely_under_it_as_under_none_of_equal_spread(
        PositiveInt family,
        PositiveInt test
    )
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        FaultModel model = finder.Model;
        int f = 1 + family.Get % (model.Families.Length - 1);
        int member = model.Members.ToList().FindIndex(m => m.Family == model.Families[f]);
        TestPlace[] meters = [.. finder.Tests.Where(t => t.Instrument == Instrument.Meter)];
        TestPlace place = meters[test.Get % meters.Length];
        Column column = model.Of(place, default);
        double volts = column.Value[member];
        var evidence = new Evidence(ReadingOf.Meter("", "battery +", volts), place, volts, column);
        var scale = new ReadingScale(model.Circuit);
        var truth = new Likelihood(scale);
        var other = new Likelihood(scale);
        truth.Take(evidence, column.At(member));
        other.Take(
            evidence,
            column.At(0) with
            {
                Sigma = column.Sigma[member],
                Battery = column.Battery[member],
                First = column.Draws[0][member],
                Second = column.Draws[1][member],
                Third = column.Draws[2][member],
            }
        );
        return (truth.Logarithm >= other.Logarithm - 1e-12).ToProperty();
    }

    private static HarnessSolver Supplied(FaultFinder finder)
    {
        HarnessSolver solver = new HarnessNetwork(finder.Bike).CreateSolver();
        solver.SetSupply(finder.Bike.BatteryVoltage);
        return solver;
    }

    private static IEnumerable<Reading> SomeReadings(FaultFinder finder) =>
        [
            ReadingOf.Meter(Riding, "tail feed", 11.1),
            ReadingOf.Meter(Riding, "park line", 11.3),
            ReadingOf.Seen(Riding, "tail lamp", Brightness.Dim),
            ReadingOf.Seen(Riding, "tail feed", Brightness.Normal, Instrument.TestLamp),
            ReadingOf.Meter("", finder.Bike.LivePoint, 12.4),
        ];

    private static int Index(IEnumerable<string> names, string name) => names.ToList().IndexOf(name);
}
