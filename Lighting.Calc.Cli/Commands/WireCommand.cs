using System.CommandLine;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>wire</c>: the wire size per run, or of one run.</summary>
internal static class WireCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command("wire", "The wire size per run; or of one run from options, with no file.");
        _ = console;
        return command.WithExample("lighting-calc wire --current 8A --length 1.8m --volts 12V");
    }
}
