using System;
using System.Buffers.Binary;
using System.Linq;

namespace ToolLedger.Tests.Interchange.Llrp;

/// <summary>Writes messages and parameters from their bytes, right and wrong ones, without the library's writer.</summary>
internal static class Frames
{
    internal const ulong T0 = 1_772_380_500_000_000; // 2026-03-01T15:55:00Z

    internal static readonly byte[] Epc1 = Fixed(13, Convert.FromHexString("3034257BF7194E4000000001"));

    internal static byte[] Message(int type, uint id, params byte[][] body) => Message(1, type, id, body);

    internal static byte[] Message(int version, int type, uint id, params byte[][] body)
    {
        byte[] all = Join(body);
        return Join(Word((version << 10) | type), Number((uint)(10 + all.Length)), Number(id), all);
    }

    internal static byte[] Report(params byte[][] tags) => Message(61, 1, tags);

    internal static byte[] Tag(params byte[][] parameters) => Sized(240, parameters);

    internal static byte[] Event(params byte[][] events) => Message(63, 2, Sized(246, [Sized(128, Long(T0)), .. events]));

    internal static byte[] Sized(int type, params byte[][] value)
    {
        byte[] all = Join(value);
        return Join(Word(type), Word(4 + all.Length), all);
    }

    internal static byte[] Fixed(int type, params byte[][] value) => Join([[(byte)(0x80 | type)], .. value]);

    internal static byte[] Antenna(int number) => Fixed(1, Word(number));

    internal static byte[] FirstUtc(ulong microseconds) => Fixed(2, Long(microseconds));

    internal static byte[] LastUtc(ulong microseconds) => Fixed(4, Long(microseconds));

    internal static byte[] FirstUptime(ulong microseconds) => Fixed(3, Long(microseconds));

    internal static byte[] LastUptime(ulong microseconds) => Fixed(5, Long(microseconds));

    internal static byte[] Rssi(int dbm) => Fixed(6, [(byte)(sbyte)dbm]);

    internal static byte[] EpcData(int bitCount, string hex) => Sized(241, Word(bitCount), Convert.FromHexString(hex));

    internal static byte[] Join(params byte[][] parts) => [.. parts.SelectMany(part => part)];

    internal static byte[] Word(int value) => [(byte)(value >> 8), (byte)value];

    internal static byte[] Number(uint value)
    {
        var bytes = new byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(bytes, value);
        return bytes;
    }

    internal static byte[] Long(ulong value)
    {
        var bytes = new byte[8];
        BinaryPrimitives.WriteUInt64BigEndian(bytes, value);
        return bytes;
    }
}
