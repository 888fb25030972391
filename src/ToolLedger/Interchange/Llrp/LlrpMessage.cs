using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;

namespace ToolLedger.Interchange.Llrp;

/// <summary>One message of a stream: its header, and its body as bytes that are read on demand.</summary>
/// <remarks>It refers to bytes that belong to the caller or to the decoder, and is good until the next call of the decoder. The default
/// value is no message. Immutable.</remarks>
public readonly ref struct LlrpMessage
{
    internal LlrpMessage(scoped in LlrpHeader header, ReadOnlySpan<byte> body, long offset)
    {
        Version = header.Version;
        Type = header.Type;
        Id = header.Id;
        Body = body;
        Offset = offset;
    }

    /// <summary>The protocol version: 1 for LLRP 1.0.1, 2 for 1.1, 3 for 2.0.</summary>
    public int Version { get; }

    /// <summary>The type, 0 to 1023.</summary>
    public LlrpMessageType Type { get; }

    /// <summary>The id: a response repeats that of its request; reports and events carry the reader's own.</summary>
    public uint Id { get; }

    /// <summary>Where the message begins: bytes from the start of the stream.</summary>
    public long Offset { get; }

    /// <summary>What follows the header.</summary>
    public ReadOnlySpan<byte> Body { get; }

    /// <summary>The tag reports of an RO_ACCESS_REPORT, to be read one after another; none for other messages.</summary>
    public LlrpReports Reports => new(this);

    /// <summary>Reads what happened at the reader.</summary>
    /// <param name="events">The events, in the order of the message, also those before a fault; empty for a message of another type.</param>
    /// <param name="fault">What is wrong, when the answer is false.</param>
    /// <returns>Whether the whole message was read.</returns>
    public bool TryReadEvents(out IReadOnlyList<LlrpReaderEvent> events, out LlrpFault fault) => LlrpEventReader.TryRead(this, out events, out fault);

    /// <summary>Reads the status that an ERROR_MESSAGE or a response carries first.</summary>
    /// <param name="status">The status, or null when the answer is false.</param>
    /// <param name="fault">What is wrong, when the answer is false.</param>
    /// <returns>Whether there is a status and it can be read.</returns>
    public bool TryReadStatus([NotNullWhen(true)] out LlrpStatus? status, out LlrpFault fault) => LlrpStatusReader.TryRead(this, out status, out fault);

    internal LlrpFault FaultAt(LlrpRule rule, int bodyOffset, ulong found) =>
        new(rule, Type, Id, Offset + LlrpHeader.Length + bodyOffset, found);
}
