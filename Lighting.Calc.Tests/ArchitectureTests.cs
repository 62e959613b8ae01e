using System.Reflection;
using System.Text.RegularExpressions;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests;

/// <summary>The arrows between the core's folders, and the rules that every file keeps.</summary>
public partial class ArchitectureTests
{
    // Each room and the rooms it may use. Rooms within a room use each other freely.
    private static readonly Dictionary<string, string[]> s_arrows = new()
    {
        ["Tables"] = [],
        ["Laws"] = ["Tables"],
        ["Bike"] = ["Tables", "Laws"],
        ["Lists"] = ["Tables", "Laws", "Bike"],
        ["Circuit"] = ["Laws", "Bike"],
        ["Solving"] = ["Laws", "Bike", "Circuit"],
        ["Checks"] = ["Tables", "Laws", "Bike", "Circuit", "Solving"],
        ["Sizing"] = ["Tables", "Laws", "Bike", "Circuit", "Solving", "Checks"],
        ["Tolerances"] = ["Tables", "Laws", "Bike", "Circuit", "Solving", "Checks"],
        ["Loom"] = ["Tables", "Laws", "Bike"],
        ["Comparisons"] = ["Laws", "Bike", "Solving", "Checks"],
        ["Plans"] = ["Tables", "Laws", "Bike", "Circuit", "Solving", "Checks", "Sizing"],
        ["Swaps"] = ["Tables", "Laws", "Bike", "Solving", "Checks", "Comparisons"],
        ["Faults"] = ["Tables", "Laws", "Bike", "Lists", "Circuit", "Solving", "Checks"],
    };

    public static TheoryData<string> Folders =>
        [
            .. Directory
                .GetDirectories(Core)
                .Select(d => Path.GetFileName(d))
                .Where(d => d is not ("bin" or "obj" or "schemas")),
        ];

    private static string Core => Path.Combine(CliProcess.Root, "Lighting.Calc");

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_room_uses_only_the_rooms_below_it(string room)
    {
        Assert.True(s_arrows.ContainsKey(room), $"Say in this test what the room {room} may use.");
        Dictionary<string, string> roomOf = Folders
            .Select(f => f.Data)
            .SelectMany(r =>
                Sources(r).SelectMany(f => Declared().Matches(Code(f)).Select(m => (Type: m.Groups[1].Value, Room: r)))
            )
            .DistinctBy(t => t.Type)
            .ToDictionary(t => t.Type, t => t.Room);
        foreach (string file in Sources(room))
        {
            string code = Code(file);
            foreach (string used in TypeName().Matches(code).Select(m => m.Value).Distinct())
                if (roomOf.TryGetValue(used, out string? other) && other != room && !s_arrows[room].Contains(other))
                    Assert.True(
                        Regex.IsMatch(code, $@"[\w>?\]] {used}\b\s*(\{{|=>|\(|[,)])"),
                        $"{file} uses {used} of {other}"
                    );
        }
    }

    [Fact]
    public void No_room_has_more_than_25_files_without_rooms_within()
    {
        foreach (
            string folder in new[] { Core, Path.Combine(CliProcess.Root, "Lighting.Calc.Cli") }
                .SelectMany(f => Directory.GetDirectories(f, "*", SearchOption.AllDirectories))
                .Where(d => !d.Split('/').Any(p => p is "obj" or "bin"))
        )
            Assert.True(Directory.GetFiles(folder, "*.cs").Length <= 25, folder);
    }

    [Fact]
    public void The_core_never_touches_console_clock_or_environment()
    {
        foreach (
            string file in Directory
                .GetFiles(Core, "*.cs", SearchOption.AllDirectories)
                .Where(f => !f.Contains("/obj/", StringComparison.Ordinal))
        )
            Assert.DoesNotMatch(
                @"\b(Console|DateTime|DateTimeOffset|Stopwatch|Environment|TimeProvider)\.",
                File.ReadAllText(file)
            );
    }

    [Fact]
    public void The_core_does_not_reference_the_command_line() =>
        Assert.DoesNotContain(
            typeof(Calc.Bike).Assembly.GetReferencedAssemblies(),
            a => a.Name is "lighting-calc" or "System.CommandLine" or "Spectre.Console"
        );

    // That it is fit for trimming and native compiling is checked by analyzers while building, as long as nothing
    // silences them.
    [Fact]
    public void The_core_is_marked_as_fit_for_native_compiling_and_silences_no_warning_about_it()
    {
        Assert.Contains(
            typeof(Calc.Bike).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>(),
            a => a is { Key: "IsTrimmable", Value: "True" }
        );
        foreach (
            string file in Directory
                .GetFiles(Core, "*.cs*", SearchOption.AllDirectories)
                .Where(f => !f.Contains("/obj/", StringComparison.Ordinal))
        )
        {
            Assert.DoesNotMatch(@"UnconditionalSuppressMessage|\bIL\d{4}\b", File.ReadAllText(file));
            // Parallel queries give a warning of their own, and made a native program six times as large.
            Assert.DoesNotMatch(@"\bAsParallel\b", File.ReadAllText(file));
        }
    }

    [Fact]
    public void Nothing_static_can_be_changed()
    {
        foreach (
            Type type in typeof(Calc.Bike)
                .Assembly.GetTypes()
                .Where(t =>
                    !t.Name.Contains('<', StringComparison.Ordinal)
                    && t.Namespace?.StartsWith("Lighting", StringComparison.Ordinal) == true
                )
        )
        {
            Assert.All(
                type.GetFields(
                    BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly
                ),
                f => Assert.True(f.IsInitOnly || f.IsLiteral || f.Name.StartsWith('<'), $"{type}.{f.Name}")
            );
            Assert.All(
                type.GetProperties(
                    BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly
                ),
                p => Assert.True(p.SetMethod is null, $"{type}.{p.Name}")
            );
        }
    }

    // A plain number in a public signature needs its reason here.
    [Fact]
    public void Public_signatures_hold_quantities_not_doubles()
    {
        string[] reasons =
        [
            "PeukertExponent: a pure number",
            "exponent: a pure number",
            "Probability: 0 to 1",
            "ExpectedInformationGain: bits",
            "Cost: a pure number",
            "Weight: a pure number",
            "Share: 0 to 1",
            "Unexplained: a share of variance",
            "Price: in the currency of the user",
        ];
        string[] known = [.. reasons.Select(r => r.Split(':')[0])];
        foreach (Type type in typeof(Calc.Bike).Assembly.GetExportedTypes())
            foreach (
                MemberInfo member in type.GetMembers(
                    BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly
                )
            )
            {
                string[] doubles = member switch
                {
                    PropertyInfo p when IsDouble(p.PropertyType) => [p.Name],
                    MethodInfo { IsSpecialName: false } m =>
                    [
                        .. m.GetParameters().Where(p => IsDouble(p.ParameterType)).Select(p => p.Name!),
                    .. IsDouble(m.ReturnType) ? [m.Name] : Array.Empty<string>(),
                ],
                    _ => [],
                };
                Assert.All(doubles, d => Assert.True(known.Contains(d), $"{type}.{member.Name}: {d}"));
            }
    }

    private static bool IsDouble(Type type) =>
        (Nullable.GetUnderlyingType(type) ?? type) is { } t
        && (t == typeof(double) || t == typeof(float) || t == typeof(decimal));

    private static string[] Sources(string room) =>
        Directory.GetFiles(Path.Combine(Core, room), "*.cs", SearchOption.AllDirectories);

    // Without comments and texts, which may name anything, and without members that have a type's name.
    private static string Code(string file) => NotCode().Replace(File.ReadAllText(file), "");

    [GeneratedRegex(
        @"^(?:public|internal) (?:static |sealed |abstract |readonly |partial )*(?:record struct|record|class|struct|enum|interface) (\w+)",
        RegexOptions.Multiline
    )]
    private static partial Regex Declared();

    [GeneratedRegex(@"//.*$|""(?:[^""\\]|\\.)*""", RegexOptions.Multiline)]
    private static partial Regex NotCode();

    // A member of the file itself may have a type's name. A type stands alone or before a member; a member of that name
    // follows a dot, is declared after its type, or is set by a name.
    [GeneratedRegex(@"(?<![\w.>?\]] ?)\b[A-Z]\w+\b(?=[ .<?\[(!])(?! =)")]
    private static partial Regex TypeName();
}
