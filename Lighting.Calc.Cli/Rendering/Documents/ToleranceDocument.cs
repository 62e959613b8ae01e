using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The part of <c>check</c> that says how sure its answers are.</summary>
internal static class ToleranceDocument
{
    // One row a result, for a spreadsheet.
    private static readonly Columns<Spread> s_result = new()
    {
        { "about", "subject", s => s.Subject },
        { "result", "result", s => s.Result },
        { "listed", "listed", s => s.Listed },
        { "5 %", "p5", s => s.P5 },
        { "median", "p50", s => s.P50 },
        { "95 %", "p95", s => s.P95 },
        { "mean", s => s.Mean },
        { "standardDeviation", s => s.StandardDeviation },
        { "mostly by", "mattersMost", s => s.MattersMost?.Part.Name },
        { "share", "share", s => s.MattersMost?.Share.DecimalFractions },
        {
            "shares",
            new Columns<VarianceShare> { { "part", s => s.Part.Name }, { "share", s => s.Share } },
            s => s.Shares
        },
    };

    private static readonly Columns<Spread> s_spread = s_result.Only(
        "listed",
        "p5",
        "p50",
        "p95",
        "mean",
        "standardDeviation",
        "mattersMost",
        "shares"
    );

    private static readonly Columns<Spread> s_other = new()
    {
        { "result", "result", s => s.Title },
        { "5 %", "p5", s => Figures.Cell(s.P5, s.Decimals) },
        { "median", "p50", s => Figures.Cell(s.P50, s.Decimals) },
        { "95 %", "p95", s => Figures.Cell(s.P95, s.Decimals) },
        { "mostly by", "mattersMost", s => Most(s.MattersMost) },
    };

    private static readonly Columns<LampTolerance> s_lamp = new()
    {
        { "lamp", "lamp", l => l.Lamp.Lamp },
        { "V: 5 %", "", l => l.Voltage.Percentile5 },
        { "median", "", l => l.Voltage.Median },
        { "95 %", "", l => l.Voltage.Percentile95 },
        { "light: 5 %", "", l => l.RelativeLight?.Percentile5, "F0" },
        { "median", "", l => l.RelativeLight?.Median, "F0" },
        { "95 %", "", l => l.RelativeLight?.Percentile95, "F0" },
        { "voltageV", s_spread, l => VoltageOf(l) },
        { "dropPercent", s_spread, l => DropOf(l) },
        { "relativeLight", s_spread, l => LightOf(l) },
    };

    private static readonly Columns<LampTolerance> s_drop = new()
    {
        { "lamp", "lamp", l => l.Lamp.Lamp },
        { "drop %: 5 %", "", l => l.Drop.Percentile5 },
        { "median", "", l => l.Drop.Median },
        { "95 %", "", l => l.Drop.Percentile95 },
        { "drop mostly by", "", l => Most(l.Drop.MattersMost) },
    };

    private static readonly Columns<FuseTolerance> s_fuse = new()
    {
        { "fuse", f => f.Fuse.Name },
        { "usableA", f => f.UsableCurrent },
        { "verdict", f => f.VerdictText },
        { "currentA", s_spread, f => CurrentOf(f) },
    };

    private static readonly Columns<VerdictTolerance> s_verdict = new()
    {
        { "about", "subject", v => v.Subject },
        { "verdict", "verdict", v => v.Verdict },
        { "holds on %", "", v => Figures.Cell(Odds(v.Probability.Percent), 1) },
        { "probability", v => v.Probability },
    };

    private static readonly Columns<TolerancePart> s_part = new()
    {
        { "part", p => p.Name },
        { "shape", p => p.Spread.Shape.ToString().ToLowerInvariant() },
        { "limits", p => p.Spread.Limits },
        { "source", p => p.Spread.Source },
    };

    // As many bars as the first sheet has room for.
    private const int MostBars = 10;

    /// <summary>How sure the verdict is, in a line.</summary>
    public static string Sureness(ToleranceReport report)
    {
        VerdictTolerance bike = report.Verdicts.First(v => v.Subject == "the bike");
        return $"Sure: {bike.Verdict} on {Figures.Number(Odds(bike.Probability.Percent), 1)} % of "
            + $"{report.Samples.ToString(CultureInfo.InvariantCulture)} bikes drawn.";
    }

    /// <summary>How often each verdict holds, as bars, the least certain first.</summary>
    public static Block[] Odds(ToleranceReport report)
    {
        VerdictTolerance[] unsure = [.. report.Verdicts.Where(v => v.Probability.DecimalFractions < 1)];
        VerdictTolerance[] shown =
            unsure.Length == 0 ? [.. report.Verdicts.Where(v => v.Subject == "the bike")] : [.. unsure.Take(MostBars)];
        return
        [
            new BarChart(
                $"How often each verdict holds, of {report.Samples.ToString(CultureInfo.InvariantCulture)} bikes drawn "
                    + "within the tolerances of their parts",
                ["always (100 %)"],
                [
                    .. shown.Select(v => new Bar(
                        v.Subject,
                        v.Probability.Percent,
                        $"{v.Verdict}: {Figures.Number(Odds(v.Probability.Percent), 1)} %",
                        [100]
                    )),
                ]
            ),
            new Paragraph(Certain(report, unsure.Length - shown.Length)),
        ];
    }

    private static string Certain(ToleranceReport report, int more)
    {
        int unsure = report.Verdicts.Count(v => v.Probability.DecimalFractions < 1);
        string rest =
            unsure == 0 ? "Every verdict holds on every bike drawn."
            : unsure < report.Verdicts.Length ? "Every other verdict holds on every bike drawn."
            : "";
        return $"{(more > 0 ? $"{more} more that do not always hold are below. " : "")}{rest}".Trim();
    }

    /// <summary>Every result and its percentiles, one row each.</summary>
    public static SpreadsheetOnly Spreadsheet(ToleranceReport report) =>
        s_result.Spreadsheet([
            .. report.Lamps.SelectMany(l => new[] { VoltageOf(l), DropOf(l), LightOf(l) }).OfType<Spread>(),
            .. Others(report),
        ]);

    public static IEnumerable<Block> Blocks(ToleranceReport report)
    {
        yield return new Heading(
            $"Tolerance: {report.Samples.ToString(CultureInfo.InvariantCulture)} bikes drawn within the spreads of "
                + $"their parts (seed {report.Seed.ToString(CultureInfo.InvariantCulture)})"
        );
        yield return new Paragraph(
            "5 % and 95 % of the bikes are at or below the outer figures. Lamps each in their worst lasting setting, "
                + "fuses in their worst."
        );
        yield return s_lamp.Table(report.Lamps);
        if (report.Bike.HasNetwork)
            yield return s_drop.Table(report.Lamps);
        yield return s_other.Table(Others(report));
        VerdictTolerance[] unsure = [.. report.Verdicts.Where(v => v.Probability.DecimalFractions < 1)];
        if (unsure.Length > 0)
            yield return s_verdict.Table(unsure);
        yield return new Paragraph(
            $"{Certain(report, more: 0)} The spreads and their sources: lighting-calc tables tolerances.".Trim()
        );
    }

    /// <summary>Writes the JSON object <c>tolerance</c>.</summary>
    public static void Write(Utf8JsonWriter json, ToleranceReport report)
    {
        json.WriteStartObject("tolerance");
        json.Write("samples", report.Samples);
        json.Write("seed", report.Seed);
        json.Write("states", report.States);
        json.Write("lamps", s_lamp, report.Lamps);
        json.Write("fuses", s_fuse, report.Fuses);
        json.Write("breakEvenRpm", s_spread, BreakEvenOf(report));
        json.Write("netAmpereHours", s_spread, RideOf(report));
        json.Write("verdicts", s_verdict, report.Verdicts);
        json.Write("parts", s_part, report.Parts);
        json.WriteEndObject();
    }

    private static IEnumerable<Spread> Others(ToleranceReport report) =>
        [.. report.Fuses.Select(CurrentOf).Append(BreakEvenOf(report)).Append(RideOf(report)).OfType<Spread>()];

    private static Spread? VoltageOf(LampTolerance lamp) => Of(lamp.Lamp.Lamp, "voltageV", lamp.Voltage, v => v.Volts);

    private static Spread? DropOf(LampTolerance lamp) => Of(lamp.Lamp.Lamp, "dropPercent", lamp.Drop, v => v.Percent);

    private static Spread? LightOf(LampTolerance lamp) =>
        Of(lamp.Lamp.Lamp, "relativeLight", lamp.RelativeLight, v => v.DecimalFractions);

    private static Spread? CurrentOf(FuseTolerance fuse) =>
        Of(fuse.Fuse.Name, "currentA", fuse.Current, v => v.Amperes, $"{fuse.Fuse.Name}, A");

    private static Spread? BreakEvenOf(ToleranceReport report) =>
        Of("charging", "breakEvenRpm", report.BreakEven, v => v.RevolutionsPerMinute, "load covered from, rpm", 0);

    private static Spread? RideOf(ToleranceReport report) =>
        Of("ride", "netAmpereHours", report.RideBalance, v => v.AmpereHours, "ride, Ah net");

    private static Spread? Of<T>(
        string subject,
        string result,
        ResultSpread<T>? spread,
        Func<T, double> number,
        string title = "",
        int decimals = 2
    )
        where T : struct, IQuantity
    {
        return spread is null
            ? null
            : new Spread(subject, result, title, decimals, spread.Shares)
            {
                Listed = Number(spread.Listed),
                P5 = Number(spread.Percentile5),
                P50 = Number(spread.Median),
                P95 = Number(spread.Percentile95),
                Mean = Number(spread.Mean),
                StandardDeviation = Number(spread.StandardDeviation),
            };

        double? Number(T? value) => value is { } known ? number(known) : null;
    }

    private static string Most(VarianceShare? share) =>
        share is null ? "-" : $"{share.Part.Name} ({Figures.Number(share.Share.Percent, 0)} %)";

    // Rounded towards the doubt: only what held on every bike is printed as 100.
    private static double Odds(double percent) =>
        percent is > 99.9 and < 100 ? 99.9
        : percent is > 0 and < 0.1 ? 0.1
        : percent;

    // A result's spread in the unit of its key.
    private sealed record Spread(
        string Subject,
        string Result,
        string Title,
        int Decimals,
        ImmutableArray<VarianceShare> Shares
    )
    {
        public double? Listed { get; init; }

        public double? P5 { get; init; }

        public double? P50 { get; init; }

        public double? P95 { get; init; }

        public double? Mean { get; init; }

        public double? StandardDeviation { get; init; }

        public VarianceShare? MattersMost => Shares.IsEmpty ? null : Shares[0];
    }
}
