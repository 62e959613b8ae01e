using System.Reflection;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Published;

/// <summary>The table of accuracies in Lighting.Calc/MODELS.md says what the published checks find.</summary>
public class AccuracyTests
{
    private static readonly string s_models = Path.Combine(CliProcess.Root, "Lighting.Calc", "MODELS.md");

    // To write the table anew: LIGHTING_CALC_WRITE_ACCURACY=1 dotnet test --filter AccuracyTests
    [Fact]
    public void The_table_of_accuracies_is_what_the_published_checks_find()
    {
        string generated = AccuracyTable.Generated(),
            document = File.ReadAllText(s_models);
        if (Environment.GetEnvironmentVariable("LIGHTING_CALC_WRITE_ACCURACY") == "1")
            File.WriteAllText(s_models, AccuracyTable.With(document, generated));
        else
            Assert.Equal(AccuracyTable.In(document), generated);
    }

    [Fact]
    public void Every_check_that_compares_figures_says_against_what_and_no_other_does()
    {
        foreach ((MethodInfo method, PublishedCheck check) in AccuracyTable.Run())
        {
            string name = $"{method.DeclaringType!.Name}.{method.Name}";
            AgainstAttribute? against = method.GetCustomAttribute<AgainstAttribute>();
            Assert.True(against is null == (check.Figures.Count == 0), name);
            string? complaint = against is null ? null : check.Complaint(against);
            Assert.True(complaint is null, $"{name}: {complaint}");
        }
    }

    [Theory]
    [InlineData(CheckKind.Unstated, "", 0.01, "it does not state its kind")]
    [InlineData((CheckKind)9, "", 0.01, "it does not state its kind")]
    [InlineData(CheckKind.Model, "lamps", 0.01, "both its sides come from lamps.csv, which the library reads")]
    [InlineData(CheckKind.Model, "", 0.0, "every figure is met to the last digit")]
    [InlineData(CheckKind.Model, "faa-wire", 0.01, null)]
    [InlineData(CheckKind.Copied, "lamps", 0.0, null)]
    [InlineData(CheckKind.Arithmetic, "", 0.0, null)]
    public void A_check_without_a_kind_or_with_both_sides_from_one_row_is_refused(
        object kind,
        string table,
        double deviation,
        string? complaint
    )
    {
        var check = new PublishedCheck();
        check.Figures.Add(new PublishedFigure(deviation, 0.02));
        if (table.Length > 0)
            check.Tables.Add(table);
        string? found = check.Complaint(new AgainstAttribute("a model", "a publication, page 1", (CheckKind)kind));
        if (complaint is null)
            Assert.Null(found);
        else
            Assert.StartsWith(complaint, found, StringComparison.Ordinal);
    }

    // A check that loads a table past Publication would not be seen to read it.
    [Fact]
    public void Checks_read_tables_through_Publication_alone() =>
        Assert.Equal(
            ["Publication.cs"],
            Directory
                .EnumerateFiles(Path.Combine(CliProcess.Root, "Lighting.Calc.Tests", "Published"), "*.cs")
                .Where(f =>
                    File.ReadAllText(f).Contains("PublishedTable" + ".Load", StringComparison.Ordinal)
                )
                .Select(Path.GetFileName)
        );

    [Fact]
    public void Models_are_held_against_350_figures_of_40_publications_or_more()
    {
        var models = AccuracyTable.ByKind()[CheckKind.Model];
        Assert.True(models.Sum(c => c.Check.Figures.Count) >= 350);
        Assert.True(AccuracyTable.Publications(models) >= 40);
    }

    // A check of what a publication says in words, or does not say, has no figure to be off by; any other is missing in
    // the table.
    [Fact]
    public void Only_these_checks_compare_no_figures() =>
        Assert.Equal(
            [
                "ISO_8820_3_blade_above_its_last_gate_is_said_to_be_outside",
                "ISO_8820_3_blade_at_134_percent_may_never_open",
                "ISO_8820_3_blade_times_just_beside_a_gate_lie_on_both_sides_of_it",
                "Large_and_maxi_fuses_are_not_said_to_hold_110_percent",
                "Melting_energy_of_other_fuses_is_not_known",
                "UL_248_14_glass_just_beside_its_gates",
                "Up_to_its_rating_a_fuse_carries",
                "Common_practice_a_21_W_signal_lamp_gives_90_percent_light_after_150_to_250_ms",
                "Common_practice_the_surge_of_a_5_W_lamp_is_within_a_tenth_after_20_to_100_ms",
                "Outside_the_table_of_tungsten_is_refused",
                "NHTSA_01931ztv_and_Swiss_741_41_article_79_flash_rate_window",
                "A_list_gives_a_run_its_colour_and_gets_it_back",
                "IEC_60757_2021_5_1_nothing_else_is_a_code",
                "IEC_60757_2021_5_1_printed_pairs",
                "IEC_60757_table_1",
            ],
            AccuracyTable.Run().Where(r => r.Check.Figures.Count == 0).Select(r => r.Method.Name)
        );
}
