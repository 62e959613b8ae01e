using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A run that a fuse feeds, with the dead short at its far end in the setting of most resistance.</summary>
/// <param name="Run">The run.</param>
/// <param name="FarEnd">Its end away from the fuse.</param>
/// <param name="FeedOhms">Live terminal to far end, without the fuse.</param>
/// <param name="ReturnOhms">From where its lamps return to the earth terminal; zero where no lamp tells.</param>
/// <param name="ReturnFrom">That point; null where no lamp tells.</param>
/// <param name="Path">Names of the parts on the way to the far end.</param>
/// <param name="LeastSquareMillimetres">Copper of the smallest wire in the short's way, there and back.</param>
/// <param name="Setting">The setting.</param>
internal sealed record DownstreamRun(
    Run Run,
    string FarEnd,
    double FeedOhms,
    double ReturnOhms,
    string? ReturnFrom,
    ImmutableArray<string> Path,
    double LeastSquareMillimetres,
    Setting Setting
)
{
    public double LoopOhms => FeedOhms + ReturnOhms;
}
