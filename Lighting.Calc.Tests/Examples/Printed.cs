namespace Lighting.Calc.Tests.Examples;

/// <summary>Keeps the lines that an example prints.</summary>
internal sealed class Printed
{
    public List<string> Lines { get; } = [];

    public void WriteLine(string line) => Lines.Add(line);
}
