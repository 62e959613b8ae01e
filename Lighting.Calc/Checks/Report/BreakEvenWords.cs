namespace Lighting.Calc;

/// <summary>A break-even speed in words that follow "is covered".</summary>
internal static class BreakEvenWords
{
    public static string Of(BreakEven breakEven)
    {
        string text = breakEven.Outcome switch
        {
            BreakEvenOutcome.At => $"from {PlainFigures.Rpm(breakEven.Speed!.Value)}",
            BreakEvenOutcome.Always => "at any engine speed",
            BreakEvenOutcome.Never => "at no engine speed of the curve",
            BreakEvenOutcome.BelowCurve =>
                $"from the curve's first point, {PlainFigures.Rpm(breakEven.Speed!.Value)}, or below it",
            BreakEvenOutcome.NotKnown => "at an unknown speed, outside the curve",
            _ => throw new InvalidOperationException($"Unknown outcome {breakEven.Outcome}."),
        };
        return breakEven.LostAgainAt is { } lost ? $"{text}, and no longer above {PlainFigures.Rpm(lost)}" : text;
    }
}
