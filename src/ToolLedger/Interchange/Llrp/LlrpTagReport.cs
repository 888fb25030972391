using System;
using System.Buffers.Binary;
using ToolLedger.Identifiers;
using ToolLedger.Tools;

namespace ToolLedger.Interchange.Llrp;

/// <summary>One TagReportData: what a reader says of a tag over an interval of time. Everything but the tag may be absent.</summary>
/// <remarks>
/// <para>Source: LLRP 1.1 (2010), 13.2.3 and 16.2.7.3. Absent is null and nothing else: a reader may also leave away what has not changed, and only
/// the host knows what it enabled (<see cref="LlrpCarryOver"/>).</para>
/// <para>It refers to the bytes of its message and is good as long as that is. The default value has no tag. Immutable.</para>
/// </remarks>
public readonly ref struct LlrpTagReport
{
    private readonly ReadOnlySpan<byte> _bytes;
    private readonly LlrpTagLayout _layout;
    private readonly LlrpMessageType _messageType;
    private readonly uint _messageId;

    internal LlrpTagReport(scoped in LlrpFault fault) => Fault = fault;

    internal LlrpTagReport(LlrpMessage message, int start, int end)
    {
        _bytes = message.Body[start..end];
        _messageType = message.Type;
        _messageId = message.Id;
        Offset = message.Offset + LlrpHeader.Length + start;
        LlrpRule rule = _layout.Read(_bytes, out int faultOffset, out ulong found);
        if (rule != LlrpRule.None)
        {
            Fault = message.FaultAt(rule, start + faultOffset, found);
        }
    }

    /// <summary>What is wrong with the report; null when it was read whole. With a fault the values that came before it are there, and
    /// make no read.</summary>
    public LlrpFault? Fault { get; }

    /// <summary>Where the report begins: bytes from the start of the stream.</summary>
    public long Offset { get; }

    /// <summary>Whether the report names a tag. A tag of no bits is one.</summary>
    public bool HasTag => EpcOffset > 0;

    /// <summary>The bits of the tag as many as count, from EPC-96 or EPCData alike; empty without a tag.</summary>
    public Epc Epc => HasTag ? Epc.FromBytes(_bytes[EpcOffset..], _layout.EpcBitCount) : default;

    /// <summary>The tag; empty without one.</summary>
    public TagId Tag => TagId.FromEpc(Epc);

    /// <summary>The antenna, 0 to 65,535. Absent, the report may cover several antennas.</summary>
    public int? AntennaId => Word(LlrpParameterType.AntennaId);

    /// <summary>The strongest signal of the interval in dBm, -128 to 127.</summary>
    public int? PeakRssi => OffsetOf(LlrpParameterType.PeakRssi) is > 0 and int at ? (sbyte)_bytes[at] : null;

    /// <summary>The channel, from 1.</summary>
    public int? ChannelIndex => Word(LlrpParameterType.ChannelIndex);

    /// <summary>The first sighting in microseconds since 1970-01-01T00:00:00Z by the reader's clock.</summary>
    public ulong? FirstSeenUtcMicroseconds => Long(LlrpParameterType.FirstSeenUtc);

    /// <summary>The first sighting in microseconds since the reader was started.</summary>
    public ulong? FirstSeenUptimeMicroseconds => Long(LlrpParameterType.FirstSeenUptime);

    /// <summary>The last sighting in microseconds since 1970-01-01T00:00:00Z by the reader's clock.</summary>
    public ulong? LastSeenUtcMicroseconds => Long(LlrpParameterType.LastSeenUtc);

    /// <summary>The last sighting in microseconds since the reader was started.</summary>
    public ulong? LastSeenUptimeMicroseconds => Long(LlrpParameterType.LastSeenUptime);

    /// <summary>How many sightings are merged, up to 65,535, which means "or more".</summary>
    public int? TagSeenCount => Word(LlrpParameterType.TagSeenCount);

    /// <summary>The reader operation that made the report.</summary>
    public uint? RoSpecId => Double(LlrpParameterType.RoSpecId);

    /// <summary>Which part of that operation, from 1.</summary>
    public int? SpecIndex => Word(LlrpParameterType.SpecIndex);

    /// <summary>Which inventory settings of that part.</summary>
    public int? InventoryParameterSpecId => Word(LlrpParameterType.InventoryParameterSpecId);

    /// <summary>The access operation that was tried on the tag.</summary>
    public uint? AccessSpecId => Double(LlrpParameterType.AccessSpecId);

    /// <summary>The protocol control word of a Gen2 tag; its upper five bits are the length of the EPC in words.</summary>
    public int? ProtocolControl => Word(LlrpParameterType.ProtocolControl);

    /// <summary>The CRC of a Gen2 tag.</summary>
    public int? Crc => Word(LlrpParameterType.Crc);

    /// <summary>The first extended protocol control word of a Gen2 tag.</summary>
    public int? XpcW1 => Word(LlrpParameterType.XpcW1);

    /// <summary>The second extended protocol control word of a Gen2 tag.</summary>
    public int? XpcW2 => Word(LlrpParameterType.XpcW2);

    /// <summary>The parameters of the report in their order, also those that are not interpreted here: results of access operations, makers' own.</summary>
    public LlrpParameters Parameters => new(_bytes);

    /// <summary>The report as received, with its header; empty for a fault outside any report.</summary>
    public ReadOnlySpan<byte> Bytes => _bytes;

    /// <summary>A fault of the report as a whole.</summary>
    internal LlrpFault FaultOf(LlrpRule rule, ulong found) => new(rule, _messageType, _messageId, Offset, found);

    internal int EpcOffset => _layout.EpcOffset;

    internal int EpcBitCount => _layout.EpcBitCount;

    internal int OffsetOf(int type) => _layout.OffsetOf(type);

    private int? Word(int type) => OffsetOf(type) is > 0 and int at ? BinaryPrimitives.ReadUInt16BigEndian(_bytes[at..]) : null;

    private uint? Double(int type) => OffsetOf(type) is > 0 and int at ? BinaryPrimitives.ReadUInt32BigEndian(_bytes[at..]) : null;

    private ulong? Long(int type) => OffsetOf(type) is > 0 and int at ? BinaryPrimitives.ReadUInt64BigEndian(_bytes[at..]) : null;
}
