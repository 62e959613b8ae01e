using System.CommandLine;

namespace Lighting.Calc.Cli.Commands;

/// <summary>The options for many bikes at once.</summary>
internal sealed class FleetOptions
{
    private readonly Option<int> _most = new("--most")
    {
        Description = "Of many bikes: how many of the worst the table shows; default 50.",
        DefaultValueFactory = _ => 50,
        HelpName = "N",
    };
    private readonly Option<string?> _shard = new("--shard")
    {
        Description = "Of many bikes: only every Nth from the Ith on, I from 1 to N, such as 3/16.",
        HelpName = "I/N",
    };
    private readonly Option<bool> _timing = new("--timing")
    {
        Description = "Of many bikes: say on standard error how long reading, checking and writing took.",
    };

    public FleetOptions(Command command)
    {
        command.Add(_most);
        command.Add(_shard);
        command.Add(_timing);
    }

    /// <summary>Whether these paths, or the options, ask for many bikes.</summary>
    public bool AsksForMany(ParseResult parsed, IReadOnlyList<string> paths) =>
        paths.Count > 1 || parsed.GetValue(_shard) is not null || FleetFolders.HoldsBikes(paths[0]);

    /// <exception cref="InputException">The number is below 1.</exception>
    public int Most(ParseResult parsed) =>
        parsed.GetValue(_most) is >= 1 and var most ? most : throw new InputException("--most is 1 or more.");

    /// <exception cref="InputException">The text is not a shard.</exception>
    public Shard Shard(ParseResult parsed) =>
        parsed.GetValue(_shard) is not { } text ? Commands.Shard.Whole
        : Commands.Shard.TryParse(text, out Shard shard) ? shard
        : throw new InputException($"--shard '{text}' is not a shard: expected I/N with I from 1 to N, such as 3/16.");

    public bool Timing(ParseResult parsed) => parsed.GetValue(_timing);
}
