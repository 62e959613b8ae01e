namespace Lighting.Calc.Tests.Cli;

/// <summary>What a run of the program gave.</summary>
internal sealed record CliResult(int ExitCode, string Output, string Errors);
