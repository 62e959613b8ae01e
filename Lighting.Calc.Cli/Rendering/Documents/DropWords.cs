
namespace Lighting.Calc.Cli.Rendering;

/// <summary>The words of a ledger's kinds.</summary>
internal static class DropWords
{
    public static string Of(DropKind kind) => kind switch
    {
        DropKind.Battery => "battery",
        DropKind.Fuse => "fuse",
        DropKind.Switch => "switch",
        DropKind.FeedWire => "feed wire",
        DropKind.FeedJoint => "feed joints",
        DropKind.ReturnWire => "return wire",
        DropKind.ReturnJoint => "return joints",
        _ => throw new InvalidOperationException($"Unknown kind {kind}."),
    };
}
