using System.Text;
using Lighting.Calc.Cli;
using Microsoft.Win32.SafeHandles;

// One write for many lines. A file or a pipe gets UTF-8 whatever the locale says; a terminal what it can show.
Encoding encoding = Console.IsOutputRedirected
    ? new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)
    : Console.Out.Encoding;
var output = new StreamWriter(Opened(), encoding, bufferSize: 32 * 1024);
return await new Application(
    output,
    Console.Error,
    isTerminal: !Console.IsOutputRedirected,
    showsProgress: !Console.IsErrorRedirected,
    answers: Console.In,
    asks: !Console.IsInputRedirected && !Console.IsOutputRedirected
).RunAsync(args);

// The console's own stream takes what a closed pipe refuses for written, and many bikes would be checked for nobody. A
// file keeps it: others may write on where this program ends.
static Stream Opened()
{
    if (!Console.IsOutputRedirected || OperatingSystem.IsWindows())
        return Console.OpenStandardOutput();
    var pipe = new FileStream(new SafeFileHandle(1, ownsHandle: false), FileAccess.Write, bufferSize: 0);
    return pipe.CanSeek ? Console.OpenStandardOutput() : pipe;
}
