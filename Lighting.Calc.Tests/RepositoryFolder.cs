using Lighting.Calc.Tests;
using Lighting.Calc.Tests.Cli;

[assembly: AssemblyFixture(typeof(RepositoryFolder))]

namespace Lighting.Calc.Tests;

/// <summary>The current folder of all tests: the root of the repository, where commands are typed.</summary>
public sealed class RepositoryFolder
{
    public RepositoryFolder() => Directory.SetCurrentDirectory(CliProcess.Root);
}
