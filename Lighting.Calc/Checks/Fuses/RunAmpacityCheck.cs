using UnitsNet;

namespace Lighting.Calc;

/// <summary>A run and what its wire carries continuously.</summary>
public sealed record RunAmpacityCheck
{
    internal RunAmpacityCheck(Run run, CurrentRating rating, ElectricCurrent worstCurrent, Setting worstSetting) =>
        (Run, Rating, WorstCurrent, WorstSetting) = (run, rating, worstCurrent, worstSetting);

    /// <summary>The run.</summary>
    public Run Run { get; }

    /// <summary>The rating of its wire.</summary>
    public CurrentRating Rating { get; internal init; }

    /// <summary>The largest current in any setting, without sign.</summary>
    public ElectricCurrent WorstCurrent { get; }

    /// <summary>The setting it flows in.</summary>
    public Setting WorstSetting { get; }

    /// <summary>The rating if it is ordinary PVC cable; null where its kind is stated.</summary>
    public CurrentRating? IfOrdinary { get; internal init; }

    /// <summary>Whether the wire carries its load; null where no rating is published.</summary>
    public bool? HoldsLoad => Rating.Current is { } carries ? WorstCurrent.Amperes <= carries.Amperes + 1e-9 : null;
}
