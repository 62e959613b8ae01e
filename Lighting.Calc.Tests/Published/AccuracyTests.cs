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
        foreach ((MethodInfo method, IReadOnlyList<PublishedFigure> figures) in AccuracyTable.Run())
            Assert.True(
                method.GetCustomAttribute<AgainstAttribute>() is null == (figures.Count == 0),
                $"{method.DeclaringType!.Name}.{method.Name}"
            );
    }

    // A check of what a publication says in words, or does not say, has no figure to be off by; any other is missing in
    // the table.
    [Fact]
    public void Only_these_checks_compare_no_figures() =>
        Assert.Equal(
            [
                "ISO_8820_3_blade_above_its_last_gate_is_said_to_be_outside",
                "ISO_8820_3_blade_at_134_percent_may_never_open",
                "Melting_energy_of_other_fuses_is_not_known",
                "UL_248_14_glass_just_beside_its_gates",
                "Up_to_its_rating_a_fuse_carries",
                "Outside_the_table_of_tungsten_is_refused",
                "UN_R37_W5W_from_its_cap_watts_would_exceed_its_maximum_at_13_5_V",
                "NHTSA_01931ztv_and_Swiss_741_41_article_79_flash_rate_window",
                "A_list_gives_a_run_its_colour_and_gets_it_back",
                "IEC_60757_2021_5_1_nothing_else_is_a_code",
                "IEC_60757_2021_5_1_printed_pairs",
                "IEC_60757_table_1",
            ],
            AccuracyTable.Run().Where(r => r.Figures.Count == 0).Select(r => r.Method.Name)
        );
}
