namespace Lighting.Calc.Tests.Cli;

/// <summary>A folder of a test's own, removed with it.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("lighting-calc-test-").FullName;

    public string Write(string name, string text)
    {
        string file = System.IO.Path.Combine(Path, name);
        File.WriteAllText(file, text);
        return file;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
