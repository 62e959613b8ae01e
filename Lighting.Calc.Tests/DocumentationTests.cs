using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;

namespace Lighting.Calc.Tests;

/// <summary>What the compiler does not ask of the documentation.</summary>
public class DocumentationTests
{
    private static readonly Assembly s_core = typeof(Harness.Bike).Assembly;

    [Fact]
    public void Every_parameter_of_the_public_surface_is_documented()
    {
        Dictionary<string, XElement> documented = XDocument.Load(Path.ChangeExtension(s_core.Location, ".xml")).Descendants("member").ToDictionary(m => m.Attribute("name")!.Value);
        (string Name, bool Documented)[] parameters =
        [
            .. from type in s_core.GetExportedTypes()
               where !typeof(Delegate).IsAssignableFrom(type)
               from method in type.GetMembers(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly).OfType<MethodBase>()
               where method.GetCustomAttribute<CompilerGeneratedAttribute>() is null && (!method.IsSpecialName || method.IsConstructor) && method.GetParameters().Length > 0
               let members = documented.Where(d => d.Key.StartsWith($"M:{type.FullName}.{method.Name.Replace('.', '#')}", StringComparison.Ordinal) && TakesParametersOf(d.Key, method)).Select(d => d.Value).ToArray()
               where members.Length > 0 && !members.Any(m => m.Element("inheritdoc") is not null)
               from parameter in method.GetParameters()
               select ($"{type.Name}.{method.Name}: {parameter.Name}", members.Any(m => m.Elements("param").Any(p => p.Attribute("name")!.Value == parameter.Name))),
        ];
        Assert.Empty(parameters.Where(p => !p.Documented).Select(p => p.Name));
        Assert.True(parameters.Length > 150, $"{parameters.Length} parameters were found; there are more.");
    }

    // The members of one name differ by their parameters; as many of them, with as many commas outside braces, are enough here.
    private static bool TakesParametersOf(string key, MethodBase method)
    {
        int open = key.IndexOf('(', StringComparison.Ordinal);
        if (open < 0)
            return false;
        int depth = 0, count = 1;
        foreach (char c in key.AsSpan(open + 1))
            (depth, count) = c switch { '{' => (depth + 1, count), '}' => (depth - 1, count), ',' when depth == 0 => (depth, count + 1), _ => (depth, count) };
        string name = key[..open];
        return count == method.GetParameters().Length && (name.EndsWith(method.Name.Replace('.', '#'), StringComparison.Ordinal) || name.Contains("``", StringComparison.Ordinal));
    }
}
