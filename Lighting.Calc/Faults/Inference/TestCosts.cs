namespace Lighting.Calc;

/// <summary>What a test costs one person with two hands.</summary>
/// <param name="circuit">The bike's circuit.</param>
/// <param name="settings">The settings that the switches were in before.</param>
internal sealed class TestCosts(FaultCircuit circuit, IReadOnlyCollection<Setting> settings)
{
    private readonly Dictionary<Instrument, double> _instruments = Enum.GetValues<Instrument>()
        .ToDictionary(i => i, i => circuit.Options.Cost(FaultWords.InstrumentWord(i)));

    private readonly Dictionary<Setting, double> _settings = [];
    private readonly double _otherSetting = circuit.Options.Cost("other setting");
    private readonly double _held = circuit.Options.Cost("held switch");
    private readonly double _twoPoints = circuit.Options.Cost("two points");
    private readonly double _fuseOut = circuit.Options.Cost("fuse out");
    private readonly double _everyLamp = circuit.Options.Cost("every lamp");
    private readonly double _jumper = circuit.Options.Cost("jumper");
    private readonly double _unplugged = circuit.Options.Cost("unplugged");

    public double Of(in TestPlace test) =>
        (test.IsEveryLamp ? _everyLamp : _instruments[test.Instrument])
        + (test.IsOnBench ? 0 : OfSetting(test.Setting) + (Hands(test) ? _held * Held(test.Setting) : 0))
        + (test.To >= 0 && (test.IsOnGenerator || test.To != circuit.FrameNode) ? _twoPoints : 0)
        // To unplug the generator takes what taking a fuse out takes.
        + (test.IsOnGenerator ? _fuseOut : 0)
        + (circuit.FuseOf(test) >= 0 ? _fuseOut : 0)
        + (test.HasJumper ? _jumper : 0)
        + (test.IsUnplugged ? _unplugged * (test.Unplugged < 0 ? circuit.Lamps.Length : 1) : 0);

    // Who only looks at one lamp has a hand for the lever.
    private static bool Hands(in TestPlace test) =>
        test.HasJumper || test.IsEveryLamp || test.Instrument is not (Instrument.Visual or Instrument.GoodLamp);

    // Each switch that has to be moved, from the nearest setting of those before.
    private double OfSetting(Setting setting)
    {
        if (!_settings.TryGetValue(setting, out double cost))
            _settings[setting] = cost =
                _otherSetting
                * (
                    settings.Count == 0
                        ? 1
                        : settings.Min(s =>
                            s.Positions.Count(p => !Name.Equal(p.Position, setting.PositionOf(p.Switch) ?? ""))
                        )
                );
        return cost;
    }

    private int Held(Setting setting) =>
        setting.Positions.Count(p => !Name.Equal(p.Position, SwitchDefinition.Off) && circuit.IsHeld(p.Switch));
}
