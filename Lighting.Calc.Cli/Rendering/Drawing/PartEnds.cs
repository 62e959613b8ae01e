namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>The points that the parts of a drawing join. Without runs the listed points are ignored: every lamp is
/// across the battery, behind the fuse if there is one.</summary>
internal sealed class PartEnds(Bike bike, OperatingPoint point)
{
    private readonly string _feed = bike.Fuses.IsEmpty ? bike.LivePoint : point.Points[^1].Point;

    public string From(Fuse fuse) => bike.HasNetwork ? fuse.From! : bike.LivePoint;

    public string To(Fuse fuse) => bike.HasNetwork ? fuse.To! : _feed;

    public string Feed(FittedLamp lamp) => bike.HasNetwork ? lamp.Feed! : _feed;

    public string Return(FittedLamp lamp) => bike.HasNetwork ? lamp.Return! : bike.EarthPoint;
}
