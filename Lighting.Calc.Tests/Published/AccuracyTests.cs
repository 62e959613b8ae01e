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
        string generated = AccuracyTable.Generated(), document = File.ReadAllText(s_models);
        if (Environment.GetEnvironmentVariable("LIGHTING_CALC_WRITE_ACCURACY") == "1")
            File.WriteAllText(s_models, AccuracyTable.With(document, generated));
        else
            Assert.Equal(AccuracyTable.In(document), generated);
    }

    [Fact]
    public void Every_check_that_compares_figures_says_against_what_and_no_other_does()
    {
        foreach ((MethodInfo method, IReadOnlyList<PublishedFigure> figures) in AccuracyTable.Run())
            Assert.True(method.GetCustomAttribute<AgainstAttribute>() is null == (figures.Count == 0), $"{method.DeclaringType!.Name}.{method.Name}");
    }
}
