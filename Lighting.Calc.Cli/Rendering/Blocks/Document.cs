using System.Text.Json;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>A result in every form: text, CSV and HTML are rendered from its blocks.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Verdict">What it comes to.</param>
/// <param name="Cautions">What to beware of in all that follows; null where nobody acts on it.</param>
/// <param name="Blocks">Lays it out for people.</param>
/// <param name="Json">Writes its JSON members.</param>
internal sealed record Document(
    string Title,
    string Verdict,
    CautionList? Cautions,
    Func<IEnumerable<Block>> Blocks,
    Action<Utf8JsonWriter> Json
)
{
    /// <summary>What kind of result it is, the member <c>result</c> of its JSON: the beginning of its title.</summary>
    public string Result => Title.Split(':')[0].ToLowerInvariant();

    /// <summary>How the verdict turns out; null where it is none, but a figure.</summary>
    public BikeVerdict? Outcome { get; init; }

    /// <summary>What a page has to write on, such as the date.</summary>
    public IReadOnlyList<string> Fields { get; init; } = [];

    /// <summary>What only a page shows, between the verdict and the cautions.</summary>
    public Func<IEnumerable<Block>> Lead { get; init; } = () => [];

    /// <summary>What else belongs on a page's first sheet, after the cautions.</summary>
    public Func<IEnumerable<Block>> FirstSheet { get; init; } = () => [];

    /// <summary>The rest of a page; null where it is what text has.</summary>
    public Func<IEnumerable<Block>>? Page { get; init; }

    /// <summary>Whether a page of it is filled in and saved.</summary>
    public bool IsForm { get; init; }

    /// <summary>Cautions that stand among the blocks, before the step they belong to.</summary>
    public IReadOnlyList<CautionList> StepCautions { get; init; } = [];

    /// <summary>The verdict with the sign of its outcome.</summary>
    public string SignedVerdict =>
        Outcome switch
        {
            BikeVerdict.Suits => $"✔ {Verdict}",
            BikeVerdict.DoesNotSuit => $"✖ {Verdict}",
            BikeVerdict.NotJudged => $"! {Verdict}",
            _ => Verdict,
        };
}
