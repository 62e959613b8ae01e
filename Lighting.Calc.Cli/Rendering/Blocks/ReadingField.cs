namespace Lighting.Calc.Cli.Rendering;

/// <summary>A place for a reading: a row of <c>readings.csv</c>, and what a bike in order shows.</summary>
/// <param name="Row">The row without its reading.</param>
/// <param name="Expected">The expected reading as the list writes it; empty where it is unknown.</param>
internal sealed record ReadingField(Reading Row, string Expected)
{
    /// <summary>Whether a word is chosen, where others take a number.</summary>
    public bool IsLook => Row.Instrument == Instrument.Visual;

    /// <summary>What it is called for those who do not see the table.</summary>
    public string Label =>
        $"{FaultWords.InstrumentWord(Row.Instrument)}, {Row.Point}, {Row.When}"
        + (Row.Jumper is { } jumper ? $", jumper {jumper}" : "");

    public static Cell Cell(Reading row, string expected) =>
        new(CommonBlocks.Blank, null) { Field = new ReadingField(row, expected) };
}
