using System.Text;

namespace Lighting.Calc.Benchmarks;

/// <summary>Turns one list into another that is a little wrong: bytes, cells, lines, pieces of other lists.</summary>
internal sealed class ListMutator(int seed)
{
    private const int MostBytes = 64 * 1024;

    private static readonly byte[][] s_pieces =
    [
        .. new[]
        {
            "\"",
            "\"\"",
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
            "+",
            "@",
            "%",
            ".",
            "1e999",
            "-1e308",
            "5e-324",
            "NaN",
            "Infinity",
            "1,5",
            "1.800,5",
            " ",
            "\u00a0",
            "\u202e",
            "\u2028",
            "\ufeff",
            "\ud83c\udfcd",
            "\u0130",
            "\u0131",
            "İ",
            "ﬁ",
            "e\u0301",
            "lights=low",
            "lights=low|high; brake=on",
            "lights=",
            "=on",
            ";;",
            "battery +",
            "battery -",
            "battery+",
            "P21/5W",
            "H4 low",
            "16 AWG",
            "16 AWG stranded",
            "1.5 mm2",
            "0",
            "-0",
            "9999999999999999999",
            "20 mΩ",
            "20 mohm",
            "6 ft",
            "0.5 h",
            "led",
            "led resistor",
            "fixed",
            "thermal",
            "direct",
            "positive",
            "circuit,lamp",
            "rpm,current",
            "sep=;",
            "#",
            "\u001b[2J",
            "=cmd|' /C calc'!A0",
        }.Select(Encoding.UTF8.GetBytes),
    ];

    private readonly Random _random = new(seed);

    public byte[] Mutate(byte[] list, byte[] other)
    {
        var bytes = new List<byte>(list);
        for (int changes = _random.Next(3) == 0 ? _random.Next(2, 7) : 1; changes > 0; changes--)
            Change(bytes, other);
        return bytes.Count <= MostBytes ? [.. bytes] : [.. bytes[..MostBytes]];
    }

    private void Change(List<byte> bytes, byte[] other)
    {
        int at = _random.Next(bytes.Count + 1);
        switch (_random.Next(9))
        {
            case 0 when at < bytes.Count:
                bytes[at] = (byte)_random.Next(256);
                break;
            case 1 when at < bytes.Count:
                bytes[at] ^= (byte)(1 << _random.Next(8));
                break;
            case 2:
                bytes.RemoveRange(at, Math.Min(_random.Next(1, 30), bytes.Count - at));
                break;
            case 3:
                bytes.InsertRange(at, bytes.GetRange(at, Math.Min(_random.Next(60), bytes.Count - at)));
                break;
            case 4: // a line again, once or many times
                (int from, int length) = Line(bytes, at);
                byte[] line = [.. bytes.GetRange(from, length)];
                for (int times = _random.Next(20) == 0 ? 400 : 1; times > 0 && bytes.Count < MostBytes; times--)
                    bytes.InsertRange(from, line);
                break;
            case 5: // a cell of one place in another
                (int begin, int cell) = Cell(bytes, at);
                byte[] text = [.. bytes.GetRange(begin, cell)];
                (int place, int old) = Cell(bytes, _random.Next(bytes.Count + 1));
                bytes.RemoveRange(place, old);
                bytes.InsertRange(place, text);
                break;
            case 6 when other.Length > 0:
                int start = _random.Next(other.Length);
                bytes.InsertRange(at, other.AsSpan(start, Math.Min(_random.Next(120), other.Length - start)).ToArray());
                break;
            case 7 when _random.Next(20) == 0:
                bytes.InsertRange(
                    at,
                    Enumerable.Repeat(s_pieces[_random.Next(s_pieces.Length)], _random.Next(2000)).SelectMany(p => p)
                );
                break;
            default: // a piece in place of a cell, or put in
                byte[] piece = s_pieces[_random.Next(s_pieces.Length)];
                if (_random.Next(2) == 0)
                {
                    (at, int length2) = Cell(bytes, at);
                    bytes.RemoveRange(at, length2);
                }

                bytes.InsertRange(at, piece);
                break;
        }
    }

    private static (int From, int Length) Line(List<byte> bytes, int at) => Between(bytes, at, b => b == '\n', 1);

    private static (int From, int Length) Cell(List<byte> bytes, int at) =>
        Between(bytes, at, b => b is (byte)',' or (byte)';' or (byte)'\n' or (byte)'\t', 0);

    private static (int From, int Length) Between(List<byte> bytes, int at, Predicate<byte> isEnd, int taken)
    {
        int from = at;
        while (from > 0 && !isEnd(bytes[from - 1]))
            from--;
        int to = at;
        while (to < bytes.Count && !isEnd(bytes[to]))
            to++;
        return (from, Math.Min(to + taken, bytes.Count) - from);
    }
}
