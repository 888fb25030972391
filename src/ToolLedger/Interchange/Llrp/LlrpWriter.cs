using System;
using System.Buffers;
using System.Buffers.Binary;
using System.Globalization;
using ToolLedger.Identifiers;
using ToolLedger.Reads;

namespace ToolLedger.Interchange.Llrp;

/// <summary>Writes what a reader would send, for archives, demonstrations and tests: reads as RO_ACCESS_REPORT, events, keep-alives and their answers
/// (LLRP 1.0.1). What it writes, the decoder reads back as the same.</summary>
/// <remarks>Not thread-safe.</remarks>
public sealed class LlrpWriter
{
    /// <summary>The most reads of one message; more go into further messages.</summary>
    public const int ReadsPerMessageMax = 1_000;

    private const int Version1 = 1 << 10;
    private const int ReportLengthMax = 16_384;
    private const int CentiDbmPerDbm = 100;

    private readonly IBufferWriter<byte> _output;

    /// <summary>Makes a writer.</summary>
    /// <param name="output">Where the bytes go.</param>
    /// <exception cref="ArgumentNullException">The output is null.</exception>
    public LlrpWriter(IBufferWriter<byte> output)
    {
        ArgumentNullException.ThrowIfNull(output);
        _output = output;
    }

    /// <summary>The id of the next report or event. The default is 1; it goes up by 1 with each.</summary>
    public uint NextMessageId { get; set; } = 1;

    /// <summary>The id of the read operation under which a TID is written.</summary>
    /// <value>0 to 65,535. The default is 1.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public int TidOpSpecId
    {
        get;
        init => field = value is >= 0 and <= ushort.MaxValue ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The id of an operation is 0 to 65535.");
    }
    = 1;

    /// <summary>Says whether a read can be written without changing it.</summary>
    /// <param name="read">The read.</param>
    /// <returns>The rule it breaks; none when it can be written.</returns>
    public static LlrpWriteRule Check(in TagRead read) => read.Tag.Kind != Tools.TagIdKind.Epc ? LlrpWriteRule.NoEpc
        : !IsWritable(read.FirstSeen) || !IsWritable(read.LastSeen) ? LlrpWriteRule.Time
        : read.Strength is { } rssi && !IsWritable(rssi) ? LlrpWriteRule.Strength
        : read.Count > ushort.MaxValue ? LlrpWriteRule.Count
        : read.Tid.BitCount % 16 != 0 ? LlrpWriteRule.Tid
        : read.ReportId.HasValue ? LlrpWriteRule.ReportId
        : LlrpWriteRule.None;

    /// <summary>Writes reads: EPC, antenna, strength, first and last sighting in UTC, count, and the TID as the result of a read operation, each where
    /// it is known. Nothing is written when one cannot be.</summary>
    /// <param name="reads">The reads. None write one empty report, which says that there is nothing to report.</param>
    /// <exception cref="ArgumentException">A read cannot be written; the message says which and why.</exception>
    public void WriteReports(ReadOnlySpan<TagRead> reads)
    {
        for (int i = 0; i < reads.Length; i++)
        {
            if (Check(reads[i]) is not LlrpWriteRule.None and LlrpWriteRule rule)
            {
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Read {i} cannot be written as a tag report: {rule}."), nameof(reads));
            }
        }

        do
        {
            ReadOnlySpan<TagRead> part = reads[..Math.Min(reads.Length, ReadsPerMessageMax)];
            reads = reads[part.Length..];
            WriteMessage(part);
        }
        while (!reads.IsEmpty);
    }

    /// <summary>Writes a notification of one event.</summary>
    /// <param name="what">The event. What its kind does not have is left away, and what is null is written as 0.</param>
    /// <exception cref="ArgumentNullException">The event is null.</exception>
    /// <exception cref="ArgumentException">It is unknown or a maker's own, has no time or two, or a message of over 32,767 bytes.</exception>
    public void WriteEvent(LlrpReaderEvent what)
    {
        ArgumentNullException.ThrowIfNull(what);
        byte[] body = LlrpEventWriter.Write(what);
        WriteHeader(LlrpMessageType.ReaderEventNotification, LlrpHeader.Length + body.Length, NextMessageId++);
        _output.Write(body);
    }

    /// <summary>Writes a keep-alive.</summary>
    public void WriteKeepalive() => WriteHeader(LlrpMessageType.Keepalive, LlrpHeader.Length, NextMessageId++);

    /// <summary>Writes the answer to a keep-alive, which a client owes its reader (LLRP 1.1, 13.1.4).</summary>
    /// <param name="keepaliveId">The id of the keep-alive.</param>
    public void WriteKeepaliveAck(uint keepaliveId) => WriteHeader(LlrpMessageType.KeepaliveAck, LlrpHeader.Length, keepaliveId);

    private static bool IsWritable(DateTimeOffset time) =>
        Records.RecordTime.IsInRange(time) && time.UtcTicks % TimeSpan.TicksPerMicrosecond == 0;

    private static bool IsWritable(Rssi rssi) =>
        rssi.CentiDbm % CentiDbmPerDbm == 0 && rssi.CentiDbm / CentiDbmPerDbm is >= sbyte.MinValue and <= sbyte.MaxValue;

    private void WriteMessage(ReadOnlySpan<TagRead> reads)
    {
        int length = LlrpHeader.Length;
        foreach (ref readonly TagRead read in reads)
        {
            length += LengthOf(read);
        }

        WriteHeader(LlrpMessageType.RoAccessReport, length, NextMessageId++);
        foreach (ref readonly TagRead read in reads)
        {
            Span<byte> room = _output.GetSpan(ReportLengthMax);
            int reportLength = LengthOf(read);
            Write(read, room[..reportLength]);
            _output.Advance(reportLength);
        }
    }

    private void WriteHeader(LlrpMessageType type, int length, uint id)
    {
        Span<byte> header = _output.GetSpan(LlrpHeader.Length);
        BinaryPrimitives.WriteUInt16BigEndian(header, (ushort)(Version1 | (int)type));
        BinaryPrimitives.WriteUInt32BigEndian(header[2..], (uint)length);
        BinaryPrimitives.WriteUInt32BigEndian(header[6..], id);
        _output.Advance(LlrpHeader.Length);
    }

    private static int LengthOf(in TagRead read)
    {
        Epc epc = read.Tag.Epc;
        int tidLength = read.Tid.IsEmpty ? 0 : 9 + (read.Tid.BitCount / 8);
        return 4 + (epc.BitCount == 96 ? 13 : 6 + epc.ByteCount) + (read.Antenna.IsKnown ? 3 : 0) + (read.Strength.HasValue ? 2 : 0)
            + 9 + (read.LastSeen != read.FirstSeen ? 9 : 0) + (read.Count.HasValue ? 3 : 0) + tidLength;
    }

    private void Write(in TagRead read, Span<byte> to)
    {
        WritePrefix(ref to, LlrpParameterType.TagReportData, to.Length);
        WriteEpc(read.Tag.Epc, ref to);
        if (read.Antenna.IsKnown)
        {
            WriteWord(LlrpParameterType.AntennaId, read.Antenna.Number, ref to);
        }

        if (read.Strength is { } rssi)
        {
            to[0] = 0x80 | LlrpParameterType.PeakRssi;
            to[1] = (byte)(sbyte)(rssi.CentiDbm / CentiDbmPerDbm);
            to = to[2..];
        }

        WriteTime(LlrpParameterType.FirstSeenUtc, read.FirstSeen, ref to);
        if (read.LastSeen != read.FirstSeen)
        {
            WriteTime(LlrpParameterType.LastSeenUtc, read.LastSeen, ref to);
        }

        if (read.Count is { } count)
        {
            WriteWord(LlrpParameterType.TagSeenCount, (ushort)count, ref to);
        }

        if (!read.Tid.IsEmpty)
        {
            WritePrefix(ref to, LlrpParameterType.ReadResult, 9 + (read.Tid.BitCount / 8));
            to[0] = 0;
            BinaryPrimitives.WriteUInt16BigEndian(to[1..], (ushort)TidOpSpecId);
            BinaryPrimitives.WriteUInt16BigEndian(to[3..], (ushort)(read.Tid.BitCount / 16));
            read.Tid.TryWriteBytes(to[5..], out _);
        }
    }

    private static void WriteEpc(Epc epc, ref Span<byte> to)
    {
        if (epc.BitCount == 96)
        {
            to[0] = 0x80 | LlrpParameterType.Epc96;
            to = to[1..];
        }
        else
        {
            WritePrefix(ref to, LlrpParameterType.EpcData, 6 + epc.ByteCount);
            BinaryPrimitives.WriteUInt16BigEndian(to, (ushort)epc.BitCount);
            to = to[2..];
        }

        epc.TryWriteBytes(to, out int written);
        to = to[written..];
    }

    private static void WritePrefix(ref Span<byte> to, int type, int length)
    {
        BinaryPrimitives.WriteUInt16BigEndian(to, (ushort)type);
        BinaryPrimitives.WriteUInt16BigEndian(to[2..], (ushort)length);
        to = to[4..];
    }

    private static void WriteWord(int type, ushort value, ref Span<byte> to)
    {
        to[0] = (byte)(0x80 | type);
        BinaryPrimitives.WriteUInt16BigEndian(to[1..], value);
        to = to[3..];
    }

    private static void WriteTime(int type, DateTimeOffset time, ref Span<byte> to)
    {
        to[0] = (byte)(0x80 | type);
        BinaryPrimitives.WriteUInt64BigEndian(to[1..], (ulong)((time.UtcTicks - LlrpTime.EpochTicks) / TimeSpan.TicksPerMicrosecond));
        to = to[9..];
    }
}
