using System.Text;
using Lighting.Calc.Cli;

// One write for many lines. A file or a pipe gets UTF-8 whatever the locale says; a terminal what it can show.
Encoding encoding = Console.IsOutputRedirected ? new UTF8Encoding(encoderShouldEmitUTF8Identifier: false) : Console.Out.Encoding;
var output = new StreamWriter(Console.OpenStandardOutput(), encoding, bufferSize: 32 * 1024);
return await new Application(output, Console.Error, isTerminal: !Console.IsOutputRedirected, showsProgress: !Console.IsErrorRedirected).RunAsync(args);
