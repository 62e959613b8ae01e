using UnitsNet;

namespace Lighting.Calc;

/// <summary>By what a fuse box is planned.</summary>
public sealed record FusePlanOptions
{
    /// <summary>The most ways the box has, 1 or more; null takes as many as are needed for no fuse to be larger than
    /// the wires as fitted allow.</summary>
    public int? Ways { get; init; }

    /// <summary>Whether dipped and main beam get ways of their own.</summary>
    public bool ApartDipAndMain { get; init; }

    /// <summary>Length of each new wire to the box, above zero. Default 0.3 m.</summary>
    public Length BoxLead { get; init; } = Length.FromMeters(0.3);

    /// <summary>The settings that are looked at. Default all.</summary>
    public Condition When { get; init; } = Condition.Always;

    /// <summary>Whether the engine runs; running by default.</summary>
    public EngineState Engine { get; init; }

    /// <summary>Supply voltage, above zero; null as in <see cref="CheckOptions.Supply"/>.</summary>
    public ElectricPotential? Supply { get; init; }

    /// <summary>By what fuses are judged.</summary>
    public FuseOptions Fuses { get; init; } = new();

    internal CheckOptions Check =>
        new()
        {
            When = When,
            Engine = Engine,
            Supply = Supply,
            Fuses = Fuses,
        };
}
