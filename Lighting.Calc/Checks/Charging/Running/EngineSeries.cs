using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>One setting over engine speed.</summary>
public sealed class EngineSeries
{
    internal EngineSeries() { }

    /// <summary>Which setting it is.</summary>
    public EngineSeriesKind Kind { get; internal init; }

    /// <summary>The setting.</summary>
    public Setting Setting { get; internal init; } = null!;

    /// <summary>The operating points, slowest first, each with its <see cref="OperatingPoint.Bus"/>; speeds at which
    /// the output is unknown are left out.</summary>
    public ImmutableArray<OperatingPoint> Points { get; internal init; }

    /// <summary>From which speed the battery no longer discharges.</summary>
    public BreakEven ChargesFrom { get; internal init; } = null!;

    /// <summary>Index of its brightest headlamp in the bike's lamps; null where none is lit.</summary>
    internal int? Headlamp { get; init; }

    /// <summary>Index of its stop lamp in the bike's lamps; null where none is lit.</summary>
    internal int? StopLamp { get; init; }

    /// <summary>The speed below which the headlamp has less than <see cref="LightSpeed.Share"/> of its
    /// light.</summary>
    public LightSpeed? HeadlampLight { get; internal init; }

    /// <summary>Solves the setting at a speed.</summary>
    internal Func<RotationalSpeed, OperatingPoint?> Solve { get; init; } = _ => null;

    /// <summary>The operating point at any speed: not for two threads at a time.</summary>
    /// <param name="speed">Engine speed, above zero.</param>
    /// <returns>The operating point; null where the output is unknown or the voltage not steady.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not above zero.</exception>
    public OperatingPoint? At(RotationalSpeed speed)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(speed.RevolutionsPerMinute, nameof(speed));
        return Points.FirstOrDefault(p => p.Bus!.Speed.RevolutionsPerMinute == speed.RevolutionsPerMinute)
            ?? Solve(speed);
    }

    /// <summary>Light of a lamp at one of the points: against its published light, or against its rated voltage where
    /// none is published; null for a load that gives no light.</summary>
    /// <param name="point">One of <see cref="Points"/>, or another of the same bike.</param>
    /// <param name="lamp">Index in the bike's lamps; null gives null.</param>
    internal static Ratio? LightAt(OperatingPoint point, int? lamp) =>
        lamp is { } index && point.Lamps[index] is var state ? state.PublishedLight ?? state.RelativeLight : null;
}
