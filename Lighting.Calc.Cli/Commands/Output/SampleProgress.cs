using System.Globalization;
using UnitsNet;

namespace Lighting.Calc.Cli.Commands;

/// <summary>One line on the terminal that says how far the drawing of bikes is; nothing where messages are
/// piped.</summary>
internal sealed class SampleProgress(CommandConsole console) : IProgress<Ratio>, IDisposable
{
    private readonly Lock _lock = new();
    private int _shown = -1;

    public void Report(Ratio value)
    {
        if (!console.ShowsProgress)
            return;
        lock (_lock)
        {
            int percent = (int)value.Percent;
            if (percent <= _shown)
                return;
            _shown = percent;
            console.Errors.Write(
                string.Create(CultureInfo.InvariantCulture, $"\rlighting-calc: {percent} % of the bikes drawn")
            );
        }
    }

    /// <summary>Wipes the line.</summary>
    public void Dispose()
    {
        if (_shown >= 0)
            console.Errors.Write($"\r{new string(' ', 50)}\r");
    }
}
