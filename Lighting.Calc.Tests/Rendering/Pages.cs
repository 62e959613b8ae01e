using System.Xml;
using System.Xml.Linq;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>Pages as the program writes them, read as XML: what cannot be read so is not well formed.</summary>
internal static class Pages
{
    public const string Svg = "{http://www.w3.org/2000/svg}";

    /// <summary>Names a bike's lists may hold that would break a page which does not escape them.</summary>
    public static readonly string[] Hostile =
    [
        "<script>alert(1)</script>",
        "\"><img src=x onerror=alert(2)>",
        "a & b &lt; c 'd'",
        "</style></svg><b>bold",
        "javascript:alert(3) ]]> <!--",
    ];

    public static async Task<string> Text(params string[] words)
    {
        CliResult result = await InProcess.Run(words);
        Assert.True(result.ExitCode is 0 or 1, result.Errors);
        return result.Output;
    }

    /// <summary>A page in frames of these sizes, and a script that looks into them once they are there.</summary>
    public static string Framed(string page, string script, params (int Width, int Height)[] frames)
    {
        string source = page.Replace("&", "&amp;", StringComparison.Ordinal)
            .Replace("\"", "&quot;", StringComparison.Ordinal);
        string all = string.Concat(
            frames.Select(f =>
                $"<iframe style=\"border:0;width:{f.Width}px;height:{f.Height}px\" srcdoc=\"{source}\"></iframe>"
            )
        );
        return $"<!DOCTYPE html><html><body>{all}<script>addEventListener('load', () => {{ {script} "
            + "});</script></body></html>";
    }

    public static XElement Read(string page)
    {
        using var reader = XmlReader.Create(
            new StringReader(page),
            new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null }
        );
        return XDocument.Load(reader).Root!;
    }

    public static string Local(this XElement element) => element.Name.LocalName;

    /// <summary>A bike with hostile names wherever its lists take a name.</summary>
    public static void WriteHostileBike(TemporaryFolder folder)
    {
        string[] n = [.. Hostile.Select(h => '"' + h.Replace("\"", "\"\"", StringComparison.Ordinal) + '"')];
        folder.Write("bike.csv", $"item,value\nname,{n[0]}\nsystem voltage,12 V\nbattery capacity,12 Ah\n");
        folder.Write(
            "lamps.csv",
            $"circuit,lamp,code,feed,return\n{n[1]},{n[0]},P21W,{n[2]},{n[3]}\nrear,{n[1]},R5W,{n[2]},{n[3]}\n"
        );
        folder.Write(
            "runs.csv",
            $"run,from,to,wire,length\n{n[4]},battery +,fuse in,1.5 mm2,1 m\n{n[1]},fuse out,{n[4]},1.5 mm2,1 "
                + $"m\nback,{n[3]},battery -,1.5 mm2,1 m\n"
        );
        folder.Write("fuses.csv", $"fuse,from,to,rating\n{n[3]},fuse in,fuse out,10 A\n");
        folder.Write("switches.csv", $"switch,from,to,closed in\n\"<i>tail</i>\",{n[4]},{n[2]},\"<u>on</u>\"\n");
        folder.Write("charging.csv", "rpm,current\n1000,1\n3000,6\n");
        folder.Write("ride.csv", $"stretch,rpm,minutes\n{n[0]},2000,10\n");
    }
}
