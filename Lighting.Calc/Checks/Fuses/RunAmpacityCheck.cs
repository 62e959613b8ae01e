using UnitsNet;

namespace Lighting.Calc;

/// <summary>A run and what its wire carries continuously.</summary>
/// <param name="Run">The run.</param>
/// <param name="Rating">The rating of its wire.</param>
/// <param name="WorstCurrent">The largest current in any setting, without sign.</param>
/// <param name="WorstSetting">The setting it flows in.</param>
public sealed record RunAmpacityCheck(Run Run, CurrentRating Rating, ElectricCurrent WorstCurrent, Setting WorstSetting)
{
    /// <summary>The rating if it is ordinary PVC cable; null where its kind is stated.</summary>
    public CurrentRating? IfOrdinary { get; init; }

    /// <summary>Whether the wire carries its load; null where no rating is published.</summary>
    public bool? HoldsLoad => Rating.Current is { } carries ? WorstCurrent.Amperes <= carries.Amperes + 1e-9 : null;
}
