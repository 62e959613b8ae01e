using System.Collections.Frozen;
using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>What people's words for a lamp mean: its use, watts, voltage, cap or code, such as <c>stop and tail
/// 21/5</c>, <c>pilot 4W BA9s</c> or <c>headlamp 60/55 low</c>.</summary>
/// <remarks>Every word must be understood, and all lamps that fit must be the same to the circuit: the same law and
/// reference point. The first of the table is taken then.</remarks>
internal sealed class LampWords
{
    private static readonly FrozenDictionary<string, string> s_uses = new Dictionary<string, string>
    {
        ["stop"] = "stop",
        ["brake"] = "stop",
        ["tail"] = "tail",
        ["rear"] = "tail",
        ["indicator"] = "indicator",
        ["indicators"] = "indicator",
        ["flasher"] = "indicator",
        ["flashers"] = "indicator",
        ["winker"] = "indicator",
        ["winkers"] = "indicator",
        ["turn"] = "indicator",
        ["signal"] = "indicator",
        ["headlamp"] = "headlamp",
        ["headlight"] = "headlamp",
        ["head"] = "headlamp",
        ["pilot"] = "position",
        ["parking"] = "position",
        ["park"] = "position",
        ["position"] = "position",
        ["side"] = "position",
        ["sidelight"] = "position",
        ["number"] = "number plate",
        ["plate"] = "number plate",
        ["instrument"] = "instrument",
        ["instruments"] = "instrument",
        ["speedometer"] = "instrument",
        ["speedo"] = "instrument",
        ["tachometer"] = "instrument",
        ["ammeter"] = "instrument",
        ["warning"] = "instrument",
        ["dash"] = "instrument",
        ["reversing"] = "reversing",
        ["auxiliary"] = "auxiliary",
        ["spot"] = "auxiliary",
        ["fog"] = "auxiliary",
    }.ToFrozenDictionary(Name.Comparer);

    private static readonly FrozenDictionary<string, string[]> s_filaments = new Dictionary<string, string[]>
    {
        ["high"] = ["high"],
        ["main"] = ["high"],
        ["full"] = ["high"],
        ["low"] = ["low"],
        ["dip"] = ["low"],
        ["dipped"] = ["low"],
        ["major"] = ["major", "stop"],
        ["minor"] = ["minor", "tail"],
    }.ToFrozenDictionary(Name.Comparer);

    // Caps by the names of the British trade.
    private static readonly FrozenDictionary<string, string[]> s_caps = new Dictionary<string, string[]>
    {
        ["MES"] = ["E10"],
        ["MCC"] = ["BA9s"],
        ["SCC"] = ["BA15s"],
        ["SBC"] = ["BA15d", "BAY15d"],
        ["BPF"] = ["P36d"],
        ["festoon"] = ["SV8.5"],
        ["capless"] = ["W2.1x9.5d", "W2x4.6d"],
        ["wedge"] = ["W2.1x9.5d", "W2x4.6d"],
        ["sealed"] = ["sealed beam 7 in", "sealed beam 5 3/4 in"],
    }.ToFrozenDictionary(Name.Comparer);

    private static readonly FrozenSet<string> s_fillers = new[]
    {
        "and", "with", "lamp", "lamps", "light", "lights", "bulb", "bulbs", "beam", "filament", "contact", "cap", "a",
        "the", "for",
    }.ToFrozenSet(Name.Comparer);

    private static readonly ImmutableArray<Bulb> s_bulbs =
    [
        .. LampTable.All.GroupBy(l => (Base(l), l.SystemVoltage.Volts)).Select(g => new Bulb(g.Key.Item1, [.. g])),
    ];

    private readonly string _text;
    private readonly List<string> _uses = [];
    private readonly List<string[]> _caps = [];
    private string[]? _filament;
    private string? _code;
    private double[]? _watts;
    private double? _volts;

    private LampWords(string text) => _text = text;

    /// <summary>The filaments that fit: of one bulb, or of several that are not the same to the circuit; empty if a
    /// word is not understood or nothing fits.</summary>
    public ImmutableArray<PublishedLamp> Filaments { get; private set; } = [];

    /// <summary>Whether the filaments are those of one bulb.</summary>
    public bool IsOneBulb { get; private set; }

    /// <summary>Reads words.</summary>
    /// <param name="text">The words.</param>
    /// <param name="systemVoltage">The bike's; lamps of it are preferred where the words state none.</param>
    public static LampWords Of(string text, ElectricPotential systemVoltage)
    {
        var words = new LampWords(text);
        if (words.Understands())
            words.Search(systemVoltage.Volts);
        return words;
    }

    /// <summary>The lamp of a row; null, with the fault logged, if the words do not mean one filament.</summary>
    public PublishedLamp? Read(ListRow row, string codeColumn)
    {
        if (IsOneBulb && Filaments.Length == 1)
            return Filaments[0];
        if (IsOneBulb)
            TwoFilaments.Refuse(row, codeColumn, Filaments);
        else if (Filaments.Length > 0)
            row.Fault(
                codeColumn,
                _text,
                "may be one of several lamps",
                "name its code, or its cap or filament as well",
                [.. Filaments.Select(f => f.Code).Distinct().Take(3)]
            );
        else
            row.Fault(codeColumn, LampCodes.Explain(_text));
        return null;
    }

    private bool Understands()
    {
        string[] parts = _text.Split([' ', ',', '+', '&'], StringSplitOptions.RemoveEmptyEntries);
        string[] words = [.. parts.SelectMany(Parts)];
        for (int i = 0; i < words.Length; i++)
        {
            // A unit may stand apart from its number.
            string word = words[i];
            if (i + 1 < words.Length && IsUnit(words[i + 1]) && char.IsDigit(word[^1]))
                word += words[++i];
            if (!Understands(word))
                return false;
        }

        // A use alone fits many lamps, and watts alone say nothing of the use.
        return _code is not null || _watts is not null && (_uses.Count > 0 || _caps.Count > 0);
    }

    private bool Understands(string word)
    {
        if (s_fillers.Contains(word))
            return true;
        if (s_uses.TryGetValue(word, out string? use))
            _uses.Add(use);
        else if (s_filaments.TryGetValue(word, out string[]? filament) && _filament is null)
            _filament = filament;
        else if (Caps(word) is { } caps)
            _caps.Add(caps);
        else if (Volts(word) is { } volts && _volts is null)
            _volts = volts;
        else if (CodeOf(word) is { } code && _code is null)
            _code = code;
        else if (Watts(word) is { } watts && _watts is null)
            _watts = watts;
        else
            return false;
        return true;
    }

    private void Search(double system)
    {
        Bulb[] fitting = [.. s_bulbs.Where(Fits)];
        Bulb[] own = [.. fitting.Where(b => b.Rows[0].SystemVoltage.Volts == (_volts ?? system))];
        ImmutableArray<PublishedLamp>[] found =
            [.. (own.Length > 0 || _volts is not null ? own : fitting).Select(Chosen).Where(r => r.Length > 0)];
        IsOneBulb = found.Length > 0 && Array.TrueForAll(found, f => IsSame(f, found[0]));
        Filaments = IsOneBulb ? found[0] : [.. found.SelectMany(f => f)];
    }

    private bool Fits(Bulb bulb) =>
        (_code is null || Name.Equal(bulb.Code, _code))
        && _caps.TrueForAll(c => Array.Exists(c, cap => IsCap(bulb.Rows[0].Cap, cap)))
        && _uses.TrueForAll(u => bulb.Rows.Any(r => UsesOf(r).Contains(u)))
        && (_watts is null || FitsWatts(bulb, _watts));

    // Watts of one filament mean a lamp of one, unless the filament is named.
    private bool FitsWatts(Bulb bulb, double[] watts) =>
        watts.Length == bulb.Rows.Length
            ? watts.Order().SequenceEqual(bulb.Rows.Select(Rated).Order())
            : watts.Length == 1 && _filament is not null && Filament(bulb) is [var one] && Rated(one) == watts[0];

    private static double Rated(PublishedLamp lamp) =>
        lamp.RatedPower is { } power ? (double)power.Watts : double.NaN;

    private ImmutableArray<PublishedLamp> Filament(Bulb bulb) =>
        [.. bulb.Rows.Where(r => _filament is null || _filament.Contains(r.Filament))];

    // One filament is meant where its name is given, or where the uses are those of one.
    private ImmutableArray<PublishedLamp> Chosen(Bulb bulb)
    {
        if (_filament is not null || bulb.Rows.Length == 1)
            return Filament(bulb);
        PublishedLamp[] used = [.. bulb.Rows.Where(r => _uses.Count > 0 && _uses.TrueForAll(UsesOf(r).Contains))];
        return used.Length == 1 ? [used[0]] : bulb.Rows;
    }

    private static bool IsSame(ImmutableArray<PublishedLamp> one, ImmutableArray<PublishedLamp> other) =>
        one.Length == other.Length && one.Zip(other).All(p => IsSame(p.First.Specification, p.Second.Specification));

    private static bool IsSame(LampSpecification one, LampSpecification other) =>
        one.ReferenceVoltage.Volts == other.ReferenceVoltage.Volts
        && Math.Abs(one.ReferenceCurrent.Amperes - other.ReferenceCurrent.Amperes) < 1e-9;

    // Words of letters may be joined by a slash or a hyphen, as in stop/tail; figures and codes stay whole.
    private static string[] Parts(string word) =>
        word.Any(char.IsDigit) ? [word] : word.Split(['/', '-'], StringSplitOptions.RemoveEmptyEntries);

    private static bool IsUnit(string word) =>
        word.ToLowerInvariant() is "v" or "volt" or "volts" or "w" or "watt" or "watts";

    private static double? Volts(string word) =>
        !char.IsDigit(word[^1]) && CellRanges.LampVolts.TryParse(word, out ElectricPotential volts, out _)
            ? volts.Volts
            : null;

    private static double[]? Watts(string word)
    {
        var watts = new List<double>();
        foreach (string part in word.Split('/'))
        {
            if (!CellRanges.LampWatts.TryParse(part, out Power power, out _))
                return null;
            watts.Add((double)power.Watts);
        }

        return watts.Count is 1 or 2 ? [.. watts] : null;
    }

    // A number of one or two figures is watts, though there are trade numbers such as 89.
    private static string? CodeOf(string word) =>
        word.Length > 2 || !word.All(char.IsDigit)
            ? s_bulbs.FirstOrDefault(b => Name.Equal(b.Code, word))?.Code
            : null;

    private static string[]? Caps(string word) =>
        s_caps.TryGetValue(word, out string[]? known) ? known
        : s_bulbs.Any(b => IsCap(b.Rows[0].Cap, word)) ? [word]
        : null;

    // P45t means P45t-41.
    private static bool IsCap(string cap, string word) =>
        Name.Equal(cap, word) || cap.StartsWith($"{word}-", StringComparison.OrdinalIgnoreCase);

    private static string[] UsesOf(PublishedLamp lamp) => lamp.Use.Split('|');

    private static string Base(PublishedLamp lamp) =>
        lamp.Filament.Length == 0 ? lamp.Code : lamp.Code[..^(lamp.Filament.Length + 1)];

    private sealed record Bulb(string Code, ImmutableArray<PublishedLamp> Rows);
}
