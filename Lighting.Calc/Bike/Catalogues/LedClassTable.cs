using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The generic LED lamps, one for each socket class and system voltage:
/// <c>tables/led-classes.csv</c>.</summary>
internal static class LedClassTable
{
    private const string MinorWord = " minor";

    /// <summary>Every class.</summary>
    public static ImmutableArray<LedClass> All { get; } = [.. PublishedTable.Load("led-classes").Read().Select(Parse)];

    /// <summary>The codes that lists may name: each class, and the second function of those that have two.</summary>
    public static ImmutableArray<string> Codes { get; } =
    [.. All.SelectMany(c => c.Minor is { } minor ? new[] { c.Code, minor.Code! } : [c.Code])];

    private static readonly FrozenDictionary<string, LampSpecification> s_byCode = All.SelectMany(c =>
            new[] { c.Specification, c.Minor }.OfType<LampSpecification>()
        )
        .ToFrozenDictionary(l => l.Code!, StringComparer.OrdinalIgnoreCase);

    /// <summary>The class of a socket class; null if there is none for this voltage.</summary>
    internal static LedClass? ForSocket(string socketClass, ElectricPotential systemVoltage) =>
        All.FirstOrDefault(c =>
            c.SocketClass == socketClass && Math.Abs(c.SystemVoltage.Volts - systemVoltage.Volts) < 1e-9
        );

    /// <summary>Finds a class's lamp by its code, such as <c>LED signal</c> or <c>LED stop-tail minor</c>. Case does
    /// not matter.</summary>
    /// <param name="code">The code.</param>
    /// <param name="lamp">The lamp; null if the code is none of <see cref="Codes"/>.</param>
    /// <returns>Whether the code is known.</returns>
    public static bool TryFind(string code, [NotNullWhen(true)] out LampSpecification? lamp) =>
        s_byCode.TryGetValue(code, out lamp);

    private static LedClass Parse(TableRow row)
    {
        string code = row.Text("code");
        LampType type = row.Text("type") switch
        {
            "led" => LampType.Led,
            "led resistor" => LampType.LedResistor,
            string other => throw new InvalidDataException(
                $"The table of LED classes has the unknown type '{other}' in the row of {code}."
            ),
        };
        return new LedClass(
            Code: code,
            SocketClass: row.Text("replaces_socket_class"),
            SystemVoltage: ElectricPotential.FromVolts(row.Number("system_v")),
            Specification: Lamp(row, type, code, row.Number("watts"), row.NumberOrNull("lumens")),
            Minor: row.NumberOrNull("minor_watts") is { } minor
                ? Lamp(row, type, code + MinorWord, minor, lumens: null)
                : null,
            Source: row.Text("source")
        );
    }

    private static LampSpecification Lamp(TableRow row, LampType type, string code, double watts, double? lumens)
    {
        LampSpecification lamp = LampSpecification.FromPower(
            type,
            ElectricPotential.FromVolts(row.Number("rated_v")),
            Power.FromWatts(watts),
            ElectricPotential.FromVolts(row.Number("minimum_v"))
        );
        return lamp with
        {
            Code = code,
            MaximumVoltage = ElectricPotential.FromVolts(row.Number("maximum_v")),
            ReferenceFlux = lumens is { } known ? LuminousFlux.FromLumens(known) : null,
        };
    }
}
