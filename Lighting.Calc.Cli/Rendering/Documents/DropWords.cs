namespace Lighting.Calc.Cli.Rendering;

/// <summary>The words of a breakdown's kinds.</summary>
internal static class DropWords
{
    public static string Of(VoltageDropKind kind) =>
        kind switch
        {
            VoltageDropKind.Battery => "battery",
            VoltageDropKind.Fuse => "fuse",
            VoltageDropKind.Switch => "switch",
            VoltageDropKind.FeedWire => "feed wire",
            VoltageDropKind.FeedJoint => "feed joints",
            VoltageDropKind.ReturnWire => "return wire",
            VoltageDropKind.ReturnJoint => "return joints",
            _ => throw new InvalidOperationException($"Unknown kind {kind}."),
        };
}
