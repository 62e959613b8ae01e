using System.Text.RegularExpressions;

namespace Lighting.Calc.Tests.Cli;

/// <summary>What the shells are told when a word is to be completed, and the snippets of the manual that ask for
/// it.</summary>
public partial class CompletionTests
{
    [Theory]
    [InlineData("", "check", "faults", "tables", "--version")]
    [InlineData("che", "check")]
    [InlineData("check --", "--format", "--when", "--fuse", "--out")]
    [InlineData("check shared/bikes/valley-twin --format ", "text", "csv", "json", "html")]
    [InlineData("check shared/bikes/valley-twin --engine ", "off", "running")]
    [InlineData("tables ", "lamps", "fuse-ratings", "conductors-awg")]
    [InlineData("tables fuse", "fuse-gates", "fuse-ratings")]
    [InlineData("charging --regulator ", "none", "shunt", "series")]
    public async Task Commands_options_and_their_values_are_proposed(string typed, params string[] expected)
    {
        CliResult result = await InProcess.Run($"[suggest:{typed.Length}]", typed);
        Assert.Equal((0, ""), (result.ExitCode, result.Errors));
        string[] proposed = result.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Subset(new HashSet<string>(proposed), new HashSet<string>(expected));
        Assert.Equal(proposed.Distinct(), proposed);
        string last = typed.Split(' ')[^1];
        Assert.All(proposed, p => Assert.Contains(last, p, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("lighting-calc che", "check")]
    [InlineData("lighting-calc tables fuse-g", "fuse-gates")]
    [InlineData("lighting-calc check shared/bikes/valley-twin --format js", "json")]
    public void The_snippet_for_bash_fills_in_the_word(string typed, string expected)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "a shell of Unix");
        CliResult result = Shell.Run(
            $$"""
            lighting-calc() { {{CliProcess.Typed}} "$@"; }
            {{Snippet("bash")}}
            COMP_LINE=$1 COMP_POINT=${#1} COMP_WORDS=($1) COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
            _lighting_calc
            printf '%s\n' "${COMPREPLY[@]}"
            complete -p lighting-calc
            """,
            typed
        );
        Assert.Equal("", result.Errors);
        Assert.Equal(
            [expected, "complete -o default -F _lighting_calc lighting-calc"],
            result.Output.TrimEnd().Split('\n')
        );
    }

    [Fact]
    public void The_snippet_for_zsh_fills_in_the_word()
    {
        Assert.SkipUnless(Shell.Run("command -v zsh").ExitCode == 0, "zsh is not installed");
        CliResult result = Shell.Run(
            """zsh -f -c "$1" """,
            $$"""
            lighting-calc() { {{CliProcess.Typed}} "$@"; }
            compdef() { print "compdef $@"; }
            compadd() { print -l -- "${(@P)@[-1]}"; }
            _files() { print files; }
            {{Snippet("zsh")}}
            words=(lighting-calc tables fuse-g) CURRENT=3 BUFFER='lighting-calc tables fuse-g' CURSOR=27
            _lighting_calc
            """
        );
        Assert.Equal("", result.Errors);
        Assert.Equal(
            ["compdef _lighting_calc lighting-calc", "fuse-gates", "files"],
            result.Output.TrimEnd().Split('\n')
        );
    }

    private static string Snippet(string shell) =>
        Block()
            .Matches(File.ReadAllText(Path.Combine(CliProcess.Root, "Lighting.Calc", "MANUAL.md")))
            .Single(m => m.Groups[1].Value == shell)
            .Groups[2]
            .Value;

    [GeneratedRegex(@"^```(bash|zsh)\n(.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Block();
}
