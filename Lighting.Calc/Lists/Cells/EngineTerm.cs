using System.Globalization;

namespace Lighting.Calc;

/// <summary>The engine among the switches of a reading: <c>engine=off</c>, <c>engine=running</c>,
/// <c>engine=3000 rpm</c>.</summary>
/// <remarks>On a bike with a switch of that name it is the switch.</remarks>
/// <param name="Rpm">Engine speed, zero with the engine off; null for the speed of the test.</param>
internal readonly record struct EngineTerm(double? Rpm)
{
    public const string Engine = "engine";

    /// <summary>What is expected behind the word.</summary>
    public const string Expected = "engine=off, engine=running or a speed, such as engine=3000";

    private const string Running = "running";

    /// <summary>Whether the engine runs.</summary>
    public bool IsRunning => Rpm != 0;

    /// <summary>The term of the engine in a condition; null without one, or where a switch has its name.</summary>
    public static ConditionTerm? Find(Condition when, IEnumerable<string> switches) =>
        when.Terms.FirstOrDefault(t => Name.Equal(t.Switch, Engine)) is { } term
        && !switches.Contains(Engine, Name.Comparer)
            ? term
            : null;

    /// <summary>Reads a term; null where it is not understood.</summary>
    public static EngineTerm? Of(ConditionTerm term)
    {
        string text = term.Positions.Length == 1 ? term.Positions[0] : "";
        return Name.Equal(text, SwitchDefinition.Off) ? new EngineTerm(0)
            : Name.Equal(text, Running) ? new EngineTerm(null)
            : CellRanges.Rpm.TryParse(text, out UnitsNet.RotationalSpeed speed, out _)
            && speed.RevolutionsPerMinute > 0
                ? new EngineTerm(speed.RevolutionsPerMinute)
            : null;
    }

    /// <summary>A setting with the engine at a speed, as lists have it.</summary>
    public static Condition With(Setting setting, double rpm)
    {
        string engine =
            rpm == 0
                ? SwitchDefinition.Off
                : string.Create(CultureInfo.InvariantCulture, $"{rpm:0.###} rpm");
        string rest = setting.AsCondition().ToString();
        return Condition.Parse($"{Engine}={engine}{(rest.Length > 0 ? "; " : "")}{rest}");
    }
}
