using System;

namespace ToolLedger.Interchange.Llrp;

/// <summary>What came of an access operation on a tag: words read from its memory, or that something was written, locked or erased.</summary>
/// <remarks>It refers to the bytes of its message. The default value is of type 0. Immutable.</remarks>
public readonly ref struct LlrpAccessResult
{
    internal LlrpAccessResult(int type, int? result, int opSpecId, int? wordsWritten, ReadOnlySpan<byte> words)
    {
        Type = type;
        Result = result;
        OpSpecId = opSpecId;
        WordsWritten = wordsWritten;
        Words = words;
    }

    /// <summary>The type of the parameter: 349 read, 350 write, 351 kill, 352 lock, 353 block erase, 354 block write, 360 recommission, 361 and
    /// 362 block permalock and its status, 15 a request of the client.</summary>
    public int Type { get; }

    /// <summary>The protocol's code; 0 is success. Null where the result has none.</summary>
    public int? Result { get; }

    /// <summary>Whether it was done.</summary>
    public bool IsSuccess => Result == 0;

    /// <summary>Whether it is words read from a tag's memory (type 349). Which memory, only the host knows, by the id.</summary>
    public bool IsRead => Type == LlrpParameterType.ReadResult;

    /// <summary>The host's id for the operation.</summary>
    public int OpSpecId { get; }

    /// <summary>How many words were written; null when it is no writing.</summary>
    public int? WordsWritten { get; }

    /// <summary>The 16-bit words that were read, the higher byte of each first; empty when none were.</summary>
    public ReadOnlySpan<byte> Words { get; }
}
