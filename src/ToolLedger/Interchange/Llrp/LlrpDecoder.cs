using System;
using System.Buffers;

namespace ToolLedger.Interchange.Llrp;

/// <summary>Finds the messages in the bytes of one LLRP connection or recording (LLRP 1.0.1 and 1.1; of 2.0 what it has in common).</summary>
/// <remarks>
/// <para>However the stream is cut into pieces, the messages are the same. A message that lies whole in the bytes handed in is not
/// copied; of one that is cut the bytes received are kept, so that memory follows what arrived and never what a header claims.</para>
/// <para>A header that cannot be right ends the stream (<see cref="Fault"/>): LLRP has no mark from which to find the next
/// message, so everything behind is refused until <see cref="Reset"/>. A fault inside a message leaves its border standing, and the next
/// message is read.</para>
/// <para>Reading allocates nothing but that one buffer, once. Not thread-safe: one stream, one thread at a time.</para>
/// </remarks>
public sealed class LlrpDecoder
{
    private readonly int _lengthMax;
    private byte[] _pending = [];
    private int _pendingCount;

    /// <summary>Makes a decoder at the start of a stream.</summary>
    /// <param name="options">The limits; null for the defaults.</param>
    public LlrpDecoder(LlrpDecoderOptions? options = null) => _lengthMax = (options ?? new LlrpDecoderOptions()).MessageLengthMax;

    /// <summary>The fault that ended the stream; null while it can be read.</summary>
    public LlrpFault? Fault { get; private set; }

    /// <summary>How many bytes were taken in, those of an unfinished message and those refused behind a fault included.</summary>
    public long Position { get; private set; }

    /// <summary>Whether the bytes so far end inside a message.</summary>
    public bool IsInsideMessage => _pendingCount > 0;

    /// <summary>Takes bytes up to the end of the next message.</summary>
    /// <param name="bytes">The bytes that follow those handed in before; afterwards those that are still to be taken.</param>
    /// <param name="message">The message. It refers to the bytes handed in or to the decoder's buffer: use it before the next call.</param>
    /// <returns>False when all bytes were taken and no message is complete, or the stream has ended with a fault.</returns>
    public bool TryRead(scoped ref ReadOnlySpan<byte> bytes, out LlrpMessage message)
    {
        message = default;
        if (Fault is not null)
        {
            Take(ref bytes, bytes.Length);
            return false;
        }

        if (_pendingCount == 0 && bytes.Length >= LlrpHeader.Length)
        {
            var header = new LlrpHeader(bytes);
            if (!IsUsable(header, Position))
            {
                Take(ref bytes, bytes.Length);
                return false;
            }

            if (header.MessageLength <= (uint)bytes.Length)
            {
                int length = (int)header.MessageLength;
                message = new LlrpMessage(header, bytes[LlrpHeader.Length..length], Position);
                Take(ref bytes, length);
                return true;
            }
        }

        return TryComplete(ref bytes, out message);
    }

    /// <summary>Takes bytes up to the end of the next message. See the other overload.</summary>
    /// <param name="bytes">The bytes that follow those handed in before; afterwards those that are still to be taken.</param>
    /// <param name="message">The message: use it before the next call, and before the bytes are given back.</param>
    /// <returns>False when all bytes were taken and no message is complete, or the stream has ended with a fault.</returns>
    public bool TryRead(scoped ref ReadOnlySequence<byte> bytes, out LlrpMessage message)
    {
        while (!bytes.IsEmpty)
        {
            SequencePosition next = bytes.Start;
            bytes.TryGet(ref next, out ReadOnlyMemory<byte> segment);
            ReadOnlySpan<byte> rest = segment.Span;
            bool isComplete = TryRead(ref rest, out message);

            // By the position of the next segment, because a slice of no bytes would stay at an empty one.
            bytes = !rest.IsEmpty ? bytes.Slice(segment.Length - rest.Length)
                : next.GetObject() is null ? bytes.Slice(bytes.End)
                : bytes.Slice(next);
            if (isComplete)
            {
                return true;
            }
        }

        message = default;
        return false;
    }

    /// <summary>Says that the stream has ended. Inside a message that is a fault.</summary>
    /// <returns>The fault that ended the stream; null when it ended at the border of a message.</returns>
    public LlrpFault? End()
    {
        if (Fault is null && _pendingCount > 0)
        {
            var header = _pendingCount >= LlrpHeader.Length ? new LlrpHeader(_pending) : default;
            Fault = new LlrpFault(LlrpRule.StreamCut, header.Type, header.Id, Position - _pendingCount, (ulong)_pendingCount);
        }

        return Fault;
    }

    /// <summary>Forgets the stream and begins another one: a new connection, whose bytes count from 0.</summary>
    public void Reset()
    {
        Fault = null;
        Position = 0;
        _pendingCount = 0;
    }

    private bool TryComplete(scoped ref ReadOnlySpan<byte> bytes, out LlrpMessage message)
    {
        message = default;
        if (_pendingCount < LlrpHeader.Length)
        {
            Keep(ref bytes, LlrpHeader.Length);
            if (_pendingCount < LlrpHeader.Length)
            {
                return false;
            }
        }

        var header = new LlrpHeader(_pending);
        if (!IsUsable(header, Position - _pendingCount))
        {
            Take(ref bytes, bytes.Length);
            return false;
        }

        int length = (int)header.MessageLength;
        Keep(ref bytes, length);
        if (_pendingCount < length)
        {
            return false;
        }

        _pendingCount = 0;
        message = new LlrpMessage(header, _pending.AsSpan(LlrpHeader.Length, length - LlrpHeader.Length), Position - length);
        return true;
    }

    private bool IsUsable(in LlrpHeader header, long offset)
    {
        LlrpRule rule = header.Check(_lengthMax);
        if (rule == LlrpRule.None)
        {
            return true;
        }

        ulong found = rule == LlrpRule.UnsupportedVersion ? header.Version : header.MessageLength;
        Fault = new LlrpFault(rule, header.Type, header.Id, offset, found);
        _pendingCount = 0;
        return false;
    }

    /// <summary>Copies bytes until so many are pending, or none are left.</summary>
    private void Keep(scoped ref ReadOnlySpan<byte> bytes, int wanted)
    {
        int count = Math.Min(bytes.Length, wanted - _pendingCount);
        if (_pendingCount + count > _pending.Length)
        {
            // At most twice what has arrived, whatever the header claims.
            Array.Resize(ref _pending, Math.Max(2 * (_pendingCount + count), 256));
        }

        bytes[..count].CopyTo(_pending.AsSpan(_pendingCount));
        _pendingCount += count;
        Take(ref bytes, count);
    }

    private void Take(scoped ref ReadOnlySpan<byte> bytes, int count)
    {
        bytes = bytes[count..];
        Position += count;
    }
}
