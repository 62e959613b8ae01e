namespace Lighting.Calc;

/// <summary>A look at every lamp in one setting: the readings that it gives.</summary>
internal static class RoundOfLamps
{
    /// <summary>A reading of each lamp that gives light, lit or dark as it should be.</summary>
    /// <param name="model">The faults.</param>
    /// <param name="round">The setting, with every lamp as its point.</param>
    public static IEnumerable<Reading> AsItShould(FaultModel model, Reading round)
    {
        Setting setting = SettingEnumeration.Held(model.Circuit.Bike, round.When);
        foreach (int lamp in LampsOf(model))
            yield return round with
            {
                Point = model.Circuit.Bike.Lamps[lamp].Lamp,
                Seen = Expected(model, new TestPlace(setting, Instrument.Visual, lamp)),
            };
    }

    /// <summary>The same with the lamps that a person names otherwise: <c>good</c> for none of them, else such as
    /// <c>tail lamp dark, stop lamp dim</c>; null where that is not understood.</summary>
    public static IReadOnlyList<Reading>? Answered(FaultModel model, Reading round, string answer)
    {
        if (PeopleWords.Look(answer) == Brightness.Normal)
            return [round with { Seen = Brightness.Normal }];
        SymptomText said = SymptomText.Read(model.Circuit.Bike, $"{round.When}: {answer}");
        return said.Findings.IsEmpty
            ?
            [
                .. AsItShould(model, round)
                    .Select(r =>
                        said.Readings.FirstOrDefault(s => Name.Equal(s.Point, r.Point)) is { } other
                            ? r with
                            {
                                Seen = other.Seen,
                            }
                            : r
                    ),
            ]
            : null;
    }

    /// <summary>How a lamp of a healthy bike looks.</summary>
    public static Brightness Expected(FaultModel model, in TestPlace look) =>
        LookScale.Of(model.Healthy(look, CancellationToken.None).Value);

    /// <summary>The lamps that give light.</summary>
    public static IEnumerable<int> LampsOf(FaultModel model) =>
        Enumerable.Range(0, model.Circuit.Lamps.Length).Where(model.GivesLight);
}
