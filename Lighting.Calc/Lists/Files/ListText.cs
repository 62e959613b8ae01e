using System.Buffers;
using System.Text;
using System.Text.Unicode;

namespace Lighting.Calc;

/// <summary>Checks that bytes are UTF-8 text, and names the encoding they appear to have.</summary>
internal static class ListText
{
    /// <summary>The bytes without a byte order mark; null, with the fault logged, when they are not UTF-8
    /// text.</summary>
    public static byte[]? Check(byte[] bytes, string file, FaultLog log)
    {
        const string remedy = "save it as CSV UTF-8";
        if (
            bytes.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE])
            || bytes.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF])
        )
            return Refuse(1, "the list is not UTF-8 but UTF-16");
        int nul = bytes.AsSpan().IndexOf((byte)0);
        if (nul >= 0)
            return Refuse(LineAt(nul), "the list is a binary file, not text: it holds a NUL byte");
        if (!Utf8.IsValid(bytes))
            return Refuse(LineAt(FirstWrong(bytes)), "the list is not UTF-8 from here on");

        return bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes;

        byte[]? Refuse(int line, string problem)
        {
            log.Fault(
                new ListFault
                {
                    File = file,
                    Line = line,
                    Problem = problem,
                    Expected = remedy,
                }
            );
            return null;
        }

        int LineAt(int offset) => 1 + bytes.AsSpan(0, offset).Count((byte)'\n');
    }

    private static int FirstWrong(ReadOnlySpan<byte> bytes)
    {
        int at = 0;
        while (Rune.DecodeFromUtf8(bytes[at..], out _, out int consumed) == OperationStatus.Done)
            at += consumed;
        return at;
    }
}
