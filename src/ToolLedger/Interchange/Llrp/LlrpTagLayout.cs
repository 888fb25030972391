using System;
using System.Buffers.Binary;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace ToolLedger.Interchange.Llrp;

/// <summary>Where the values of one tag report stand in its bytes.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct LlrpTagLayout
{
    private const int PrefixLength = 4;
    private const int EpcDataPrefixLength = 6;

    // By the type of the parameter; 0 means absent, since the first value comes behind the header.
    private Offsets _offsets;

    /// <summary>The number of bits of the tag's identity; -1 while there is none.</summary>
    internal int EpcBitCount { get; private set; }

    /// <summary>Where the bits of the tag's identity begin.</summary>
    internal readonly int EpcOffset => _offsets[LlrpParameterType.Epc96];

    internal readonly int OffsetOf(int type) => _offsets[type];

    /// <summary>Reads the layout of a whole parameter, as far as it is in order.</summary>
    /// <param name="bytes">The parameter with its header.</param>
    /// <param name="faultOffset">Where it is broken.</param>
    /// <param name="found">What was found there.</param>
    /// <returns>The rule it breaks.</returns>
    internal LlrpRule Read(ReadOnlySpan<byte> bytes, out int faultOffset, out ulong found)
    {
        EpcBitCount = -1;
        var reader = new LlrpParameterReader(bytes, PrefixLength);
        while (reader.TryRead())
        {
            LlrpRule rule = Note(ref reader, out found);
            if (rule != LlrpRule.None)
            {
                faultOffset = reader.Start;
                return rule;
            }
        }

        faultOffset = reader.Start;
        found = (ulong)reader.Found;
        if (reader.Rule != LlrpRule.None)
        {
            return reader.Rule;
        }

        faultOffset = 0;
        return EpcBitCount < 0 ? LlrpRule.NoTag : LlrpRule.None;
    }

    private LlrpRule Note(ref LlrpParameterReader reader, out ulong found)
    {
        found = (ulong)reader.Type;
        int type = reader.Type;
        if (reader.IsFixed)
        {
            bool isRepeat = _offsets[type] != 0 && !LlrpParameterType.IsRepeatable(type);
            if (isRepeat)
            {
                return type == LlrpParameterType.Epc96 ? LlrpRule.TwoTags : LlrpRule.RepeatedParameter;
            }

            _offsets[type] = (ushort)reader.ValueStart;
            EpcBitCount = type == LlrpParameterType.Epc96 ? 96 : EpcBitCount;
            return LlrpRule.None;
        }

        return type switch
        {
            LlrpParameterType.EpcData => NoteEpcData(ref reader, out found),
            LlrpParameterType.ReadResult or LlrpParameterType.PermalockStatusResult => CheckWords(reader.Value, out found),
            _ => LlrpRule.None,
        };
    }

    // The bits behind the count are not zero in real traffic, so the count is what decides. LLRP 1.1, EPCData.
    private LlrpRule NoteEpcData(ref LlrpParameterReader reader, out ulong found)
    {
        int count = BinaryPrimitives.ReadUInt16BigEndian(reader.Value);
        found = (ulong)count;
        if (EpcBitCount >= 0)
        {
            return LlrpRule.TwoTags;
        }

        if (reader.End - reader.Start != EpcDataPrefixLength + ((count + 7) >> 3))
        {
            return LlrpRule.CountMismatch;
        }

        EpcBitCount = count;
        _offsets[LlrpParameterType.Epc96] = (ushort)(reader.Start + EpcDataPrefixLength);
        return LlrpRule.None;
    }

    private static LlrpRule CheckWords(ReadOnlySpan<byte> value, out ulong found)
    {
        int count = BinaryPrimitives.ReadUInt16BigEndian(value[3..]);
        found = (ulong)count;
        return value.Length == 5 + (2 * count) ? LlrpRule.None : LlrpRule.CountMismatch;
    }

    [InlineArray(LlrpParameterType.FixedCount)]
    private struct Offsets
    {
        private ushort _first;
    }
}
