using System.Text;

namespace Lighting.Calc.Cli;

/// <summary>A writer whose texts show every character: hidden ones, such as the escapes of a terminal in a folder's
/// name, are spelt out by <see cref="VisibleText"/>.</summary>
internal sealed class VisibleWriter(TextWriter inner) : TextWriter
{
    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value) => Write(value.ToString());

    public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

    public override void Write(string? value) => inner.Write(VisibleText.Of(value ?? "", keepLines: true));

    public override void WriteLine(string? value) => inner.WriteLine(VisibleText.Of(value ?? "", keepLines: true));

    public override void Flush() => inner.Flush();
}
