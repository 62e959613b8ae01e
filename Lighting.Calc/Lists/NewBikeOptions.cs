namespace Lighting.Calc;

/// <summary>What a new bike is to have: see <see cref="NewBike"/>.</summary>
internal sealed record NewBikeOptions
{
    /// <summary>Whether it is a 6 V bike; otherwise it is one of 12 V.</summary>
    public bool IsSixVolts { get; init; }

    /// <summary>Whether its lamps are fed by a lighting coil without a battery, which needs no fuse.</summary>
    public bool HasLightingCoil { get; init; }

    /// <summary>Whether ignition, lights and signals have a fuse each, or one fuse feeds all. Without effect with
    /// a lighting coil.</summary>
    public bool HasSeveralFuses { get; init; }

    /// <summary>Whether it has indicators.</summary>
    public bool HasIndicators { get; init; }
}
