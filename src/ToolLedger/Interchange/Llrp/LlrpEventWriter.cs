using System;
using System.Buffers.Binary;
using System.Collections.Generic;
using System.Text;

namespace ToolLedger.Interchange.Llrp;

/// <summary>Writes the body of a READER_EVENT_NOTIFICATION.</summary>
internal static class LlrpEventWriter
{
    private const int MessageLengthMax = short.MaxValue;

    internal static byte[] Write(LlrpReaderEvent what)
    {
        byte[] text = Encoding.UTF8.GetBytes(what.Message ?? "");
        if (what.UtcMicroseconds.HasValue == what.UptimeMicroseconds.HasValue || text.Length > MessageLengthMax)
        {
            throw new ArgumentException("An event has one time, and a message of at most 32767 bytes.", nameof(what));
        }

        var stamp = new byte[8];
        BinaryPrimitives.WriteUInt64BigEndian(stamp, what.UtcMicroseconds ?? what.UptimeMicroseconds.GetValueOrDefault());
        byte[] time = Parameter(what.UtcMicroseconds.HasValue ? LlrpParameterType.UtcTimestamp : LlrpParameterType.Uptime, stamp);
        return Parameter(LlrpParameterType.ReaderEventNotificationData, [.. time, .. Event(what, text)]);
    }

    private static byte[] Event(LlrpReaderEvent what, byte[] text) => what.Kind switch
    {
        LlrpEventKind.Hopping => Parameter(LlrpParameterType.HoppingEvent, [.. Word(what.HopTableId), .. Word(what.NextChannelIndex)]),
        LlrpEventKind.Gpi => Parameter(LlrpParameterType.GpiEvent, [.. Word(what.GpiPort), (byte)(what.GpiState == true ? 0x80 : 0)]),
        LlrpEventKind.RoSpec => Parameter(
            LlrpParameterType.RoSpecEvent, [what.EventType.GetValueOrDefault(), .. Number(what.RoSpecId), .. Number(what.PreemptingRoSpecId)]),
        LlrpEventKind.BufferLevelWarning => Parameter(LlrpParameterType.BufferLevelWarning, [what.BufferPercent.GetValueOrDefault()]),
        LlrpEventKind.BufferOverflow => Parameter(LlrpParameterType.BufferOverflow, []),
        LlrpEventKind.ReaderException => Parameter(LlrpParameterType.ReaderException, [.. Word((ushort)text.Length), .. text, .. Places(what)]),
        LlrpEventKind.RfSurvey => Parameter(LlrpParameterType.RfSurveyEvent, Part(what)),
        LlrpEventKind.AiSpec => Parameter(LlrpParameterType.AiSpecEvent, [.. Part(what), .. Singulation(what)]),
        LlrpEventKind.Antenna => Parameter(LlrpParameterType.AntennaEvent, [what.EventType.GetValueOrDefault(), .. Word(what.AntennaId)]),
        LlrpEventKind.ConnectionAttempt => Parameter(LlrpParameterType.ConnectionAttempt, Word(what.ConnectionStatus)),
        LlrpEventKind.ConnectionClose => Parameter(LlrpParameterType.ConnectionClose, []),
        LlrpEventKind.SpecLoop => Parameter(LlrpParameterType.SpecLoopEvent, [.. Number(what.RoSpecId), .. Number(what.LoopCount)]),
        _ => throw new ArgumentException("An event of this kind is not written.", nameof(what)),
    };

    private static byte[] Part(LlrpReaderEvent what) => [what.EventType.GetValueOrDefault(), .. Number(what.RoSpecId), .. Word(what.SpecIndex)];

    private static byte[] Singulation(LlrpReaderEvent what) => (what.CollisionSlotCount ?? what.EmptySlotCount) is null
        ? []
        : [0x80 | LlrpParameterType.SingulationDetails, .. Word(what.CollisionSlotCount), .. Word(what.EmptySlotCount)];

    private static byte[] Places(LlrpReaderEvent what)
    {
        var bytes = new List<byte>();
        Add(LlrpParameterType.RoSpecId, what.RoSpecId is { } operation ? Number(operation) : []);
        Add(LlrpParameterType.SpecIndex, what.SpecIndex is { } part ? Word(part) : []);
        Add(LlrpParameterType.InventoryParameterSpecId, what.InventoryParameterSpecId is { } settings ? Word(settings) : []);
        Add(LlrpParameterType.AntennaId, what.AntennaId is { } antenna ? Word(antenna) : []);
        Add(LlrpParameterType.AccessSpecId, what.AccessSpecId is { } access ? Number(access) : []);
        Add(LlrpParameterType.OpSpecId, what.OpSpecId is { } step ? Word(step) : []);
        return [.. bytes];

        void Add(int type, byte[] value)
        {
            if (value.Length > 0)
            {
                bytes.Add((byte)(0x80 | type));
                bytes.AddRange(value);
            }
        }
    }

    private static byte[] Parameter(int type, ReadOnlySpan<byte> value) => [.. Word((ushort)type), .. Word((ushort)(4 + value.Length)), .. value];

    private static byte[] Word(ushort? value) => [(byte)(value.GetValueOrDefault() >> 8), (byte)value.GetValueOrDefault()];

    private static byte[] Number(uint? value)
    {
        var bytes = new byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(bytes, value.GetValueOrDefault());
        return bytes;
    }
}
