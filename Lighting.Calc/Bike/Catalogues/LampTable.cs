using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The published lamps: UN Regulation 37 categories and miniature lamp trade numbers.</summary>
public static class LampTable
{
    /// <summary>Every row.</summary>
    public static ImmutableArray<PublishedLamp> All { get; } = [.. PublishedTable.Load("lamps").Read().Select(Parse)];

    private static readonly FrozenDictionary<string, ImmutableArray<PublishedLamp>> s_byCode = All.GroupBy(l =>
            Normalise(l.Code)
        )
        .ToFrozenDictionary(g => g.Key, g => g.ToImmutableArray(), StringComparer.OrdinalIgnoreCase);

    /// <summary>Finds a lamp by its code, for a system's voltage. Case and spaces round <c>/</c> do not
    /// matter.</summary>
    /// <param name="code">A code such as <c>P21W</c> or <c>P21/5W stop</c>.</param>
    /// <param name="systemVoltage">Nominal voltage of the bike; the row of this voltage is preferred.</param>
    /// <param name="lamp">The lamp; one of another system voltage if there is none for this; null if the code is
    /// unknown.</param>
    /// <returns>Whether the code is known at all.</returns>
    public static bool TryFind(
        string code,
        ElectricPotential systemVoltage,
        [NotNullWhen(true)] out PublishedLamp? lamp
    )
    {
        lamp = null;
        if (
            !s_byCode.TryGetValue(code, out ImmutableArray<PublishedLamp> rows)
            && !s_byCode.TryGetValue(Normalise(code), out rows)
        )
            return false;
        foreach (PublishedLamp row in rows)
            if (lamp is null || Away(row) < Away(lamp))
                lamp = row;
        return lamp is not null;

        double Away(PublishedLamp row) => Math.Abs(row.SystemVoltage.Volts - systemVoltage.Volts);
    }

    private static string Normalise(string code) =>
        string.Join(' ', code.ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Replace(" /", "/", StringComparison.Ordinal)
            .Replace("/ ", "/", StringComparison.Ordinal);

    private static PublishedLamp Parse(TableRow row)
    {
        string filament = row.Text("filament");
        string code = filament.Length == 0 ? row.Text("code") : $"{row.Text("code")} {filament}";
        LampType type = row.Text("technology") switch
        {
            "filament" => LampType.Filament,
            "halogen" => LampType.Halogen,
            string other => throw new InvalidDataException(
                $"The lamp table has the unknown technology '{other}' in the row of {code}."
            ),
        };
        var volts = ElectricPotential.FromVolts(row.Number("reference_v"));
        LampSpecification specification = row.NumberOrNull("reference_w") is { } watts
            ? LampSpecification.FromPower(type, volts, Power.FromWatts(watts))
            : LampSpecification.FromCurrent(type, volts, ElectricCurrent.FromAmperes(row.Number("reference_a")));
        return new PublishedLamp
        {
            Code = code,
            Filament = filament,
            SystemVoltage = ElectricPotential.FromVolts(row.Number("system_v")),
            Specification = specification with
            {
                Code = code,
                MaximumVoltage = row.NumberOrNull("maximum_v") is { } highest
                    ? ElectricPotential.FromVolts(highest)
                    : null,
                ReferenceFlux = ReferenceFlux(row, type, volts),
                FluxVoltage = row.NumberOrNull("lumens") is null
                    ? null
                    : ElectricPotential.FromVolts(row.Number("lumens_v")),
            },
            RatedPower = row.NumberOrNull("rated_w") is { } rated ? Power.FromWatts(rated) : null,
            MaximumPower = row.NumberOrNull("max_w") is { } most ? Power.FromWatts(most) : null,
            Tolerance = row.NumberOrNull("tolerance_percent") is { } percent ? Ratio.FromPercent(percent) : null,
            Use = row.Text("use"),
            Cap = row.Text("cap"),
            SocketClass = row.Text("socket_class"),
            Source = row.Text("source"),
        };
    }

    // Lumens are printed at the test voltage, candelas at the design voltage; some rows have their reference point
    // elsewhere.
    private static LuminousFlux? ReferenceFlux(TableRow row, LampType type, ElectricPotential referenceVoltage)
    {
        if (row.NumberOrNull("lumens") is { } lumens)
            return LuminousFlux.FromLumens(
                lumens * FilamentLaw.RelativeLight(type, referenceVoltage.Volts, row.Number("lumens_v"))
            );
        return row.NumberOrNull("mscp") is { } candelas ? LuminousFlux.FromLumens(4 * Math.PI * candelas) : null;
    }
}
