using System.Text;

namespace Lighting.Calc.Tests.Lists;

/// <summary>Mutated lists: the reader gives a bike or faults that name a line, and never throws.</summary>
public class FuzzTests
{
    private static readonly string[] s_pieces =
    [
        "\"",
        ",",
        ";",
        "\t",
        "\n",
        "\r",
        "\r\n",
        "\0",
        "=",
        "|",
        "'",
        "-",
        "1e999",
        "NaN",
        "1,5",
        " ",
        "\u00a0",
        "\u202e",
        "\ud83c\udfcd",
        "lights=low",
        "battery +",
        "battery+",
        "P21/5W",
        "0",
        "\ufeff",
        "9999999999999999999",
    ];

    [Theory]
    [InlineData(1)]
    [InlineData(2, Traits = ["time", "long"])]
    [InlineData(3, Traits = ["time", "long"])]
    public void A_mutated_list_gives_a_bike_or_faults_with_lines(int seed)
    {
        var random = new Random(seed);
        int bikes = 0,
            refused = 0;
        for (int round = 0; round < 1500; round++)
        {
            (string name, string text) = ListSamples.Texts()[random.Next(9)];
            ListSource source = ListSamples
                .Texts()
                .Where(t => t.Name != name)
                .Aggregate(ListSource.Empty, (s, t) => s.With(t.Name, t.Text))
                .With(name, Mutate(text, random));
            ListResult<BikeLists> result = BikeLists.Read(source);
            if (result.TryGetValue(out BikeLists? lists))
            {
                bikes++;
                SameLists.Assert(
                    lists,
                    BikeLists
                        .Read(
                            BikeListsWriter
                                .Write(lists)
                                .Aggregate(ListSource.Empty, (s, list) => s.With(list.Key, list.Value))
                        )
                        .Value
                );
            }
            else
            {
                refused++;
            }

            Assert.All(
                result.Faults,
                f =>
                    Assert.True(
                        f.Line >= 1
                            && f.Message.StartsWith($"{f.File}:{f.Line}: ", StringComparison.Ordinal)
                            && !f.Message.AsSpan().ContainsAny('\n', '\r', '\0'),
                        $"seed {seed}, round {round}: {f.Message}"
                    )
            );
        }

        Assert.True(bikes > 20 && refused > 500, $"seed {seed}: {bikes} bikes, {refused} refused");
    }

    private static byte[] Mutate(string text, Random random)
    {
        var bytes = new List<byte>(Encoding.UTF8.GetBytes(text));
        for (int changes = random.Next(1, 4); changes > 0; changes--)
        {
            int at = random.Next(bytes.Count);
            switch (random.Next(5))
            {
                case 0:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 1:
                    bytes.RemoveRange(at, Math.Min(random.Next(1, 12), bytes.Count - at - 1));
                    break;
                case 2:
                    bytes.InsertRange(at, bytes.GetRange(at, Math.Min(random.Next(40), bytes.Count - at)));
                    break;
                default:
                    bytes.InsertRange(at, Encoding.UTF8.GetBytes(s_pieces[random.Next(s_pieces.Length)]));
                    break;
            }
        }

        return [.. bytes];
    }
}
