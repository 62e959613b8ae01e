using System.Reflection;
using System.Text.RegularExpressions;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests;

/// <summary>The arrows between the core's folders, and the rules that every file keeps.</summary>
public partial class ArchitectureTests
{
    // Each folder and the folders it may use.
    private static readonly Dictionary<string, string[]> Arrows = new()
    {
        ["Tables"] = [],
        ["Conductors"] = ["Tables"],
        ["Lamps"] = ["Tables"],
        ["Harness"] = ["Tables", "Conductors", "Lamps"],
        ["Lists"] = ["Tables", "Conductors", "Lamps", "Harness"],
        ["Network"] = ["Conductors", "Lamps", "Harness"],
        ["Fuses"] = ["Tables", "Conductors", "Lamps", "Harness", "Network"],
        ["Charging"] = ["Tables", "Lamps", "Harness", "Network"],
        ["WireSizing"] = ["Conductors", "Lamps", "Harness", "Network", "Fuses"],
        ["Verdicts"] = ["Conductors", "Lamps", "Harness", "Network", "Fuses", "Charging"],
        ["Tolerances"] = ["Tables", "Conductors", "Lamps", "Harness", "Network", "Fuses", "Charging", "Verdicts"],
        ["Swaps"] = ["Tables", "Conductors", "Lamps", "Harness", "Network", "Fuses", "Charging", "Verdicts"],
        ["FaultFinding"] = ["Tables", "Conductors", "Lamps", "Harness", "Lists", "Network", "Fuses", "Charging"],
    };

    public static TheoryData<string> Folders => [.. Directory.GetDirectories(Core).Select(d => Path.GetFileName(d)).Where(d => d is not "bin" and not "obj")];

    private static string Core => Path.Combine(CliProcess.Root, "Lighting.Calc");

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_folder_uses_only_the_folders_below_it(string folder)
    {
        Assert.True(Arrows.ContainsKey(folder), $"Say in this test what the folder {folder} may use.");
        foreach (string file in Directory.GetFiles(Path.Combine(Core, folder), "*.cs", SearchOption.AllDirectories))
            foreach (Match use in Use().Matches(File.ReadAllText(file)))
                Assert.True(use.Groups[1].Value == folder || Arrows[folder].Contains(use.Groups[1].Value), $"{file} uses {use.Value}");
    }

    [Fact]
    public void The_core_never_touches_console_clock_or_environment()
    {
        foreach (string file in Directory.GetFiles(Core, "*.cs", SearchOption.AllDirectories).Where(f => !f.Contains("/obj/", StringComparison.Ordinal)))
            Assert.DoesNotMatch(@"\b(Console|DateTime|DateTimeOffset|Stopwatch|Environment|TimeProvider)\.", File.ReadAllText(file));
    }

    [Fact]
    public void The_core_does_not_reference_the_command_line() =>
        Assert.DoesNotContain(typeof(Harness.Bike).Assembly.GetReferencedAssemblies(), a => a.Name is "lighting-calc" or "System.CommandLine" or "Spectre.Console");

    // That it is fit for trimming and native compiling is checked by analyzers while building, as long as nothing silences them.
    [Fact]
    public void The_core_is_marked_as_fit_for_native_compiling_and_silences_no_warning_about_it()
    {
        Assert.Contains(typeof(Harness.Bike).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>(), a => a is { Key: "IsTrimmable", Value: "True" });
        foreach (string file in Directory.GetFiles(Core, "*.cs*", SearchOption.AllDirectories).Where(f => !f.Contains("/obj/", StringComparison.Ordinal)))
        {
            Assert.DoesNotMatch(@"UnconditionalSuppressMessage|\bIL\d{4}\b", File.ReadAllText(file));
            // Parallel queries give a warning of their own, and made a native program six times as large.
            Assert.DoesNotMatch(@"\bAsParallel\b", File.ReadAllText(file));
        }
    }

    [Fact]
    public void Nothing_static_can_be_changed()
    {
        foreach (Type type in typeof(Harness.Bike).Assembly.GetTypes().Where(t => !t.Name.Contains('<', StringComparison.Ordinal) && t.Namespace?.StartsWith("Lighting", StringComparison.Ordinal) == true))
        {
            Assert.All(
                type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly),
                f => Assert.True(f.IsInitOnly || f.IsLiteral || f.Name.StartsWith('<'), $"{type}.{f.Name}"));
            Assert.All(
                type.GetProperties(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly),
                p => Assert.True(p.SetMethod is null, $"{type}.{p.Name}"));
        }
    }

    // A plain number in a public signature needs its reason here.
    [Fact]
    public void Public_signatures_hold_quantities_not_doubles()
    {
        string[] reasons =
        [
            "PeukertExponent: a pure number", "exponent: a pure number", "Probability: 0 to 1", "ExpectedInformationGain: bits", "Cost: a pure number", "Weight: a pure number", "Share: 0 to 1",
            "Unexplained: a share of variance",
        ];
        string[] known = [.. reasons.Select(r => r.Split(':')[0])];
        foreach (Type type in typeof(Harness.Bike).Assembly.GetExportedTypes())
            foreach (MemberInfo member in type.GetMembers(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
            {
                string[] doubles = member switch
                {
                    PropertyInfo p when IsDouble(p.PropertyType) => [p.Name],
                    MethodInfo { IsSpecialName: false } m => [.. m.GetParameters().Where(p => IsDouble(p.ParameterType)).Select(p => p.Name!), .. IsDouble(m.ReturnType) ? [m.Name] : Array.Empty<string>()],
                    _ => [],
                };
                Assert.All(doubles, d => Assert.True(known.Contains(d), $"{type}.{member.Name}: {d}"));
            }
    }

    private static bool IsDouble(Type type) => (Nullable.GetUnderlyingType(type) ?? type) is { } t && (t == typeof(double) || t == typeof(float) || t == typeof(decimal));

    [GeneratedRegex(@"\bLighting\.Calc\.(\w+)")]
    private static partial Regex Use();
}
