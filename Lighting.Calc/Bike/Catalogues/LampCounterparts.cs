using UnitsNet;

namespace Lighting.Calc;

/// <summary>The lamp of another system voltage that goes into the same socket: of the same code, else of the same cap,
/// filaments and use, with the nearest rated watts.</summary>
/// <remarks>Both filaments of a lamp have theirs in the same one.</remarks>
internal static class LampCounterparts
{
    // A lamp of much other watts is another lamp: common practice, no source.
    private const double MostRatio = 1.25;

    private static readonly ILookup<(double Volts, string Cap), PublishedLamp[]> s_lamps = LampTable
        .All.Where(l => l.Cap.Length > 0)
        .GroupBy(l => (l.SystemVoltage.Volts, l.Cap, Base: BaseOf(l)))
        .ToLookup(g => (g.Key.Volts, g.Key.Cap), g => g.ToArray());

    /// <summary>The counterpart of a lamp; null where none is listed.</summary>
    /// <param name="lamp">The lamp, of a code of the lamp table or of the table of LED classes.</param>
    /// <param name="from">Its system voltage.</param>
    /// <param name="to">The other system voltage.</param>
    public static LampSpecification? Of(LampSpecification lamp, ElectricPotential from, ElectricPotential to)
    {
        if (lamp.Code is not { } code)
            return null;
        if (LampTable.TryFind(code, from, out PublishedLamp? listed))
            return LampTable.TryFind(code, to, out PublishedLamp? same) && Is(same.SystemVoltage, to)
                ? same.Specification
                : Nearest(listed, to)?.Specification;
        foreach (LedClass led in LedClassTable.All)
            if (LedClassTable.ForSocket(led.SocketClass, to) is { } other)
            {
                if (Name.Equal(led.Specification.Code!, code))
                    return other.Specification;
                if (led.Minor is { } minor && Name.Equal(minor.Code!, code))
                    return other.Minor;
            }

        return null;
    }

    private static PublishedLamp? Nearest(PublishedLamp lamp, ElectricPotential to)
    {
        PublishedLamp[] own =
        [
            .. LampTable.All.Where(l => Is(l.SystemVoltage, lamp.SystemVoltage) && BaseOf(l) == BaseOf(lamp)),
        ];
        PublishedLamp[]? best = s_lamps[(to.Volts, lamp.Cap)]
            .Where(c => c.Length == own.Length && own.All(o => Match(o, c) is not null))
            .MinBy(c => own.Sum(o => Math.Log(Ratio(o, Match(o, c)!))));
        return best is null ? null : Match(lamp, best);
    }

    private static PublishedLamp? Match(PublishedLamp lamp, PublishedLamp[] candidate) =>
        candidate.FirstOrDefault(c =>
            Role(c.Filament) == Role(lamp.Filament)
            && c.Specification.Type == lamp.Specification.Type
            && c.Use.Split('|').Intersect(lamp.Use.Split('|')).Any()
            && Ratio(lamp, c) <= MostRatio
        );

    private static double Ratio(PublishedLamp one, PublishedLamp other)
    {
        double ratio = Watts(one) / Watts(other);
        return Math.Max(ratio, 1 / ratio);
    }

    private static double Watts(PublishedLamp lamp) =>
        (double)(lamp.RatedPower ?? lamp.Specification.ReferencePower).Watts;

    private static string Role(string filament) =>
        filament switch
        {
            "stop" => "major",
            "tail" => "minor",
            _ => filament,
        };

    private static string BaseOf(PublishedLamp lamp) =>
        lamp.Filament.Length == 0 ? lamp.Code : lamp.Code[..^(lamp.Filament.Length + 1)];

    private static bool Is(ElectricPotential one, ElectricPotential other) => Math.Abs(one.Volts - other.Volts) < 1e-9;
}
