using Lighting.Calc.Harness;

namespace Lighting.Calc.Network;

/// <summary>One part that can carry current between two points, for walks over the harness.</summary>
/// <param name="From">The point its current counts from.</param>
/// <param name="To">The point it counts to.</param>
/// <param name="Kind">Run, contact or fuse.</param>
/// <param name="Index">Index in that list of the bike.</param>
/// <param name="Name">Its name in reports.</param>
internal sealed record HarnessLink(string From, string To, HarnessLinkKind Kind, int Index, string Name)
{
    /// <summary>Every link of a bike with runs.</summary>
    public static IEnumerable<HarnessLink> Of(Bike bike) =>
    [
        .. bike.Runs.Select((r, i) => new HarnessLink(r.From, r.To, HarnessLinkKind.Run, i, r.Name)),
        .. bike.Switches.Select((s, i) => new HarnessLink(s.From, s.To, HarnessLinkKind.Contact, i, s.Name)),
        .. bike.Fuses.Where(f => f.From is not null && f.To is not null).Select((f, i) => new HarnessLink(f.From!, f.To!, HarnessLinkKind.Fuse, i, f.Name)),
    ];
}
