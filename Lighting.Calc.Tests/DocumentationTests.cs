using System.Diagnostics;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests;

/// <summary>What the compiler does not ask of the documentation.</summary>
public partial class DocumentationTests
{
    private const BindingFlags Declared =
        BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Assembly s_core = typeof(Calc.Bike).Assembly;
    private static readonly Dictionary<string, XElement> s_texts = XDocument
        .Load(Path.ChangeExtension(s_core.Location, ".xml"))
        .Descendants("member")
        .ToDictionary(m => m.Attribute("name")!.Value);
    private static readonly ThrownExceptions s_exceptions = new(s_core, type => Documented(s_texts[IdOf(type, "T:")]));

    [Fact]
    public void Every_parameter_of_the_public_surface_is_documented()
    {
        (string Name, bool Documented)[] parameters =
        [
            .. from type in s_core.GetExportedTypes()
            where !typeof(Delegate).IsAssignableFrom(type)
            from method in Methods(type)
            let text = s_texts.GetValueOrDefault(IdOf(method))
            where text is not null && text.Element("inheritdoc") is null
            from parameter in method.GetParameters()
            select (
                $"{type.Name}.{method.Name}: {parameter.Name}",
                text.Elements("param").Any(p => p.Attribute("name")!.Value == parameter.Name)
            ),
        ];
        Assert.Empty(parameters.Where(p => !p.Documented).Select(p => p.Name));
        Assert.True(parameters.Length > 150, $"{parameters.Length} parameters were found; there are more.");
    }

    // By itself: in its own body, or in private methods that it calls. What comes from further down is for its author
    // to say.
    [Fact]
    public void Every_exception_that_a_public_member_throws_by_itself_is_documented()
    {
        (string Name, Type Thrown, bool Documented)[] exceptions =
        [
            .. from member in Members()
            from thrown in s_exceptions.ByItself(member.Method)
            where thrown != typeof(UnreachableException)
            select (member.Name, thrown, member.Documented.Any(d => d.IsAssignableFrom(thrown))),
        ];
        Assert.Equal(
            "",
            string.Join("; ", exceptions.Where(e => !e.Documented).Select(e => $"{e.Name} throws {e.Thrown.Name}"))
        );
        Assert.True(exceptions.Length > 70, $"{exceptions.Length} exceptions were found; there are more.");
    }

    [Fact]
    public void Every_documented_exception_is_thrown_somewhere_below()
    {
        (string Name, Type Documented, bool Thrown)[] exceptions =
        [
            .. from member in Members()
            from documented in member.Documented
            select (member.Name, documented, s_exceptions.Anywhere(member.Method).Any(documented.IsAssignableFrom)),
        ];
        Assert.Equal(
            "",
            string.Join("; ", exceptions.Where(e => !e.Thrown).Select(e => $"{e.Name} documents {e.Documented.Name}"))
        );
        Assert.True(exceptions.Length > 120, $"{exceptions.Length} documented exceptions were found; there are more.");
    }

    [Fact]
    public void What_the_documentation_of_the_surface_names_is_public()
    {
        HashSet<string> surface =
        [
            .. from type in s_core.GetExportedTypes()
            from id in new[] { IdOf(type, "T:") }
                .Concat(Methods(type).Select(IdOf))
                .Concat(type.GetProperties(Declared).Select(p => $"{IdOf(type, "P:")}.{p.Name}"))
                .Concat(type.GetFields(Declared).Select(f => $"{IdOf(type, "F:")}.{f.Name}"))
            select id,
        ];
        (string From, string To)[] named =
        [
            .. from id in surface
            where s_texts.ContainsKey(id)
            from to in s_texts[id].Descendants().Attributes("cref")
            where to.Value[2..].StartsWith("Lighting.Calc.", StringComparison.Ordinal)
            select (id, to.Value),
        ];
        Assert.DoesNotContain(named, n => !surface.Contains(n.To));
        Assert.True(named.Length > 100, $"{named.Length} names were found; there are more.");
    }

    [Fact]
    public void Every_exception_type_of_the_library_is_thrown() =>
        Assert.All(
            s_core.GetTypes().Where(t => typeof(Exception).IsAssignableFrom(t)),
            t => Assert.Contains(t, Members().SelectMany(m => s_exceptions.Anywhere(m.Method)).ToHashSet())
        );

    // Its source is a publication, a table, a law by its name or another model; or the comment says that it is derived,
    // or has none.
    [Fact]
    public void Every_file_that_states_a_formula_names_its_source()
    {
        int formulas = 0;
        List<string> without = [];
        foreach (string folder in new[] { "Laws", "Bike", "Checks", "Sizing", "Swaps", "Faults" })
            foreach (
                string file in Directory.GetFiles(
                    Path.Combine(CliProcess.Root, "Lighting.Calc", folder),
                    "*.cs",
                    SearchOption.AllDirectories
                )
            )
            {
                string comments = string.Join(
                    ' ',
                    File.ReadLines(file).Select(l => l.Trim()).Where(l => l.StartsWith("///", StringComparison.Ordinal))
                );
                if (!Formula().IsMatch(comments))
                    continue;
                formulas++;
                if (!Source().IsMatch(comments))
                    without.Add(Path.GetFileName(file));
            }

        Assert.Empty(without);
        Assert.True(formulas > 15, $"{formulas} formulas were found; there are more.");
    }

    // Every public method, constructor and accessor that has a text of its own, with the exceptions the text names.
    private static IEnumerable<(string Name, MethodBase Method, Type[] Documented)> Members() =>
        from type in s_core.GetExportedTypes()
        where !typeof(Delegate).IsAssignableFrom(type)
        from member in Methods(type)
            .Select(m => (Id: IdOf(m), Method: m))
            .Concat(
                type.GetProperties(Declared)
                    .SelectMany(p =>
                        p.GetAccessors().Select(a => (Id: $"{IdOf(type, "P:")}.{p.Name}", Method: (MethodBase)a))
                    )
            )
        where member.Method.GetCustomAttribute<CompilerGeneratedAttribute>() is null && s_texts.ContainsKey(member.Id)
        let parameters = string.Join(", ", member.Method.GetParameters().Select(p => p.Name))
        select ($"{type.Name}.{member.Method.Name}({parameters})", member.Method, Documented(s_texts[member.Id]));

    private static IEnumerable<MethodBase> Methods(Type type) =>
        type.GetMembers(Declared)
            .OfType<MethodBase>()
            .Where(m =>
                m.GetCustomAttribute<CompilerGeneratedAttribute>() is null && (!m.IsSpecialName || m.IsConstructor)
            );

    private static Type[] Documented(XElement text) =>
        [
            .. text.Elements("exception")
                .Select(e => e.Attribute("cref")!.Value[2..])
                .Select(n =>
                    s_core.GetType(n) ?? Type.GetType(n) ?? Type.GetType($"{n}, System.Text.Json", throwOnError: true)!
                ),
        ];

    // The names that the compiler gives to members in its documentation file.
    private static string IdOf(MethodBase method)
    {
        string name =
            $"{IdOf(method.DeclaringType!, "M:")}.{method.Name.Replace('.', '#')}"
            + $"{(method.IsGenericMethod ? $"``{method.GetGenericArguments().Length}" : "")}";
        ParameterInfo[] parameters = method.GetParameters();
        return parameters.Length == 0
            ? name
            : $"{name}({string.Join(',', parameters.Select(p => IdOf(p.ParameterType, "")))})";
    }

    private static string IdOf(Type type, string prefix)
    {
        if (type.IsGenericParameter)
            return (type.IsGenericMethodParameter ? "``" : "`") + type.GenericParameterPosition;
        if (type.IsByRef || type.IsArray)
            return IdOf(type.GetElementType()!, "") + (type.IsByRef ? "@" : "[]");
        string name =
            prefix + (type.IsGenericType ? type.GetGenericTypeDefinition() : type).FullName!.Replace('+', '.');
        return prefix.Length > 0 || !type.IsGenericType
            ? name
            : $"{name[..name.LastIndexOf('`')]}"
                + $"{{{string.Join(',', type.GetGenericArguments().Select(a => IdOf(a, "")))}}}";
    }

    [GeneratedRegex(@"\w(\([^)]*\))? = [^.]*[·/^√∫∑Σ+−]")]
    private static partial Regex Formula();

    [GeneratedRegex(
        @"[Ss]ources?(:| of )|tables/|derived|(Ohm|Joule|Kirchhoff)'s|no source|from memory|by <see cref|of <see cref=""(PermanentMagnetAlternator|AlternatorEquivalent)"
    )]
    private static partial Regex Source();
}
