using System;
using System.Buffers.Binary;
using System.Collections.Generic;
using System.Text;

namespace ToolLedger.Interchange.Llrp;

/// <summary>Reads what a READER_EVENT_NOTIFICATION tells.</summary>
internal static class LlrpEventReader
{
    /// <summary>The most events of one notification. The protocol has twelve kinds, each at most once, and makers' own.</summary>
    internal const int EventCountMax = 1_000;

    private const int PrefixLength = 4;

    internal static bool TryRead(in LlrpMessage message, out IReadOnlyList<LlrpReaderEvent> events, out LlrpFault fault)
    {
        events = [];
        fault = default;
        if (message.Type != LlrpMessageType.ReaderEventNotification)
        {
            return true;
        }

        var reader = new LlrpParameterReader(message.Body, 0);
        while (reader.TryRead())
        {
            if (reader is { Type: LlrpParameterType.ReaderEventNotificationData, IsFixed: false })
            {
                var list = new List<LlrpReaderEvent>();
                events = list;
                return TryReadData(message, reader.Start, reader.End, list, out fault);
            }
        }

        fault = reader.Rule == LlrpRule.None
            ? message.FaultAt(LlrpRule.MissingData, 0, LlrpParameterType.ReaderEventNotificationData)
            : message.FaultAt(reader.Rule, reader.Start, (ulong)reader.Found);
        return false;
    }

    private static bool TryReadData(in LlrpMessage message, int start, int end, List<LlrpReaderEvent> events, out LlrpFault fault)
    {
        ReadOnlySpan<byte> data = message.Body[..end];
        LlrpReaderEvent stamp = ReadStamp(data, start);
        var reader = new LlrpParameterReader(data, start + PrefixLength);
        while (reader.TryRead())
        {
            if (reader is { IsFixed: false, Type: LlrpParameterType.UtcTimestamp or LlrpParameterType.Uptime })
            {
                continue;
            }

            LlrpRule rule = LlrpRule.TooManyEvents;
            if (events.Count == EventCountMax || !TryReadEvent(reader, stamp, out LlrpReaderEvent what, out rule))
            {
                fault = message.FaultAt(rule, reader.Start, (ulong)reader.Type);
                return false;
            }

            events.Add(what);
        }

        fault = reader.Rule == LlrpRule.None ? default : message.FaultAt(reader.Rule, reader.Start, (ulong)reader.Found);
        return reader.Rule == LlrpRule.None;
    }

    private static LlrpReaderEvent ReadStamp(ReadOnlySpan<byte> data, int start)
    {
        var stamp = new LlrpReaderEvent();
        var reader = new LlrpParameterReader(data, start + PrefixLength);
        while (reader.TryRead())
        {
            if (reader is { IsFixed: false, Type: LlrpParameterType.UtcTimestamp })
            {
                stamp = stamp with { UtcMicroseconds = BinaryPrimitives.ReadUInt64BigEndian(reader.Value) };
            }
            else if (reader is { IsFixed: false, Type: LlrpParameterType.Uptime })
            {
                stamp = stamp with { UptimeMicroseconds = BinaryPrimitives.ReadUInt64BigEndian(reader.Value) };
            }
        }

        return stamp;
    }

    private static bool TryReadEvent(in LlrpParameterReader reader, LlrpReaderEvent stamp, out LlrpReaderEvent what, out LlrpRule rule)
    {
        rule = LlrpRule.None;
        ReadOnlySpan<byte> value = reader.Value;
        switch (reader.IsFixed ? 0 : reader.Type)
        {
            case LlrpParameterType.ReaderException: return TryReadException(value, stamp, out what, out rule);
            case LlrpParameterType.AiSpecEvent: return TryReadAiSpec(value, stamp, out what, out rule);
            default: break;
        }

        what = reader.IsFixed ? stamp with { ParameterType = reader.Type } : reader.Type switch
        {
            LlrpParameterType.HoppingEvent => stamp with { Kind = LlrpEventKind.Hopping, HopTableId = Word(value, 0), NextChannelIndex = Word(value, 2) },
            LlrpParameterType.GpiEvent => stamp with { Kind = LlrpEventKind.Gpi, GpiPort = Word(value, 0), GpiState = (value[2] & 0x80) != 0 },
            LlrpParameterType.RoSpecEvent => stamp with
            {
                Kind = LlrpEventKind.RoSpec,
                EventType = value[0],
                RoSpecId = Number(value, 1),
                PreemptingRoSpecId = Number(value, 5),
            },
            LlrpParameterType.BufferLevelWarning => stamp with { Kind = LlrpEventKind.BufferLevelWarning, BufferPercent = value[0] },
            LlrpParameterType.BufferOverflow => stamp with { Kind = LlrpEventKind.BufferOverflow },
            LlrpParameterType.RfSurveyEvent => Part(stamp, LlrpEventKind.RfSurvey, value),
            LlrpParameterType.AntennaEvent => stamp with { Kind = LlrpEventKind.Antenna, EventType = value[0], AntennaId = Word(value, 1) },
            LlrpParameterType.ConnectionAttempt => stamp with { Kind = LlrpEventKind.ConnectionAttempt, ConnectionStatus = Word(value, 0) },
            LlrpParameterType.ConnectionClose => stamp with { Kind = LlrpEventKind.ConnectionClose },
            LlrpParameterType.SpecLoopEvent => stamp with { Kind = LlrpEventKind.SpecLoop, RoSpecId = Number(value, 0), LoopCount = Number(value, 4) },
            LlrpParameterType.Custom => stamp with { Kind = LlrpEventKind.Custom, VendorId = Number(value, 0), Subtype = Number(value, 4) },
            _ => stamp with { ParameterType = reader.Type },
        };
        return true;
    }

    private static LlrpReaderEvent Part(LlrpReaderEvent stamp, LlrpEventKind kind, ReadOnlySpan<byte> value) =>
        stamp with { Kind = kind, EventType = value[0], RoSpecId = Number(value, 1), SpecIndex = Word(value, 5) };

    private static bool TryReadAiSpec(ReadOnlySpan<byte> value, LlrpReaderEvent stamp, out LlrpReaderEvent what, out LlrpRule rule)
    {
        const int fieldsLength = 7;
        what = Part(stamp, LlrpEventKind.AiSpec, value);
        var reader = new LlrpParameterReader(value, fieldsLength);
        while (reader.TryRead())
        {
            if (reader is { IsFixed: true, Type: LlrpParameterType.SingulationDetails })
            {
                what = what with { CollisionSlotCount = Word(reader.Value, 0), EmptySlotCount = Word(reader.Value, 2) };
            }
        }

        rule = reader.Rule;
        return rule == LlrpRule.None;
    }

    private static bool TryReadException(ReadOnlySpan<byte> value, LlrpReaderEvent stamp, out LlrpReaderEvent what, out LlrpRule rule)
    {
        what = stamp with { Kind = LlrpEventKind.ReaderException };
        int end = 2 + Word(value, 0);
        rule = LlrpRule.CountMismatch;
        if (end > value.Length)
        {
            return false;
        }

        what = what with { Message = Encoding.UTF8.GetString(value[2..end]) };
        var reader = new LlrpParameterReader(value, end);
        while (reader.TryRead())
        {
            what = !reader.IsFixed ? what : reader.Type switch
            {
                LlrpParameterType.RoSpecId => what with { RoSpecId = Number(reader.Value, 0) },
                LlrpParameterType.SpecIndex => what with { SpecIndex = Word(reader.Value, 0) },
                LlrpParameterType.InventoryParameterSpecId => what with { InventoryParameterSpecId = Word(reader.Value, 0) },
                LlrpParameterType.AntennaId => what with { AntennaId = Word(reader.Value, 0) },
                LlrpParameterType.AccessSpecId => what with { AccessSpecId = Number(reader.Value, 0) },
                LlrpParameterType.OpSpecId => what with { OpSpecId = Word(reader.Value, 0) },
                _ => what,
            };
        }

        rule = reader.Rule;
        return rule == LlrpRule.None;
    }

    private static ushort Word(ReadOnlySpan<byte> value, int at) => BinaryPrimitives.ReadUInt16BigEndian(value[at..]);

    private static uint Number(ReadOnlySpan<byte> value, int at) => BinaryPrimitives.ReadUInt32BigEndian(value[at..]);
}
