using System;

namespace ToolLedger.Interchange.Llrp;

/// <summary>The limits of a decoder.</summary>
/// <remarks>Changed with <c>with</c>. Immutable and thread-safe.</remarks>
public sealed record LlrpDecoderOptions
{
    /// <summary>The most bytes of one message. A header that states more ends the stream: its border cannot be believed.</summary>
    /// <value>10 to 268,435,456 bytes. The default is 16,777,216; reports of 1.4 MB occur in recorded traffic.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public int MessageLengthMax
    {
        get;
        init => field = value is >= LlrpHeader.Length and <= 1 << 28
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "The most bytes of a message are 10 to 268435456.");
    }
    = 1 << 24;
}
