using System.Globalization;
using System.Runtime.InteropServices;

namespace ToolLedger.Interchange.Llrp;

/// <summary>Which rule the bytes of a stream break, in which message, where, and what was found there.</summary>
/// <remarks>The default value means that nothing is wrong. Immutable and thread-safe.</remarks>
[StructLayout(LayoutKind.Auto)]
public readonly record struct LlrpFault
{
    internal LlrpFault(LlrpRule rule, LlrpMessageType messageType, uint messageId, long offset, ulong found)
    {
        Rule = rule;
        MessageType = messageType;
        MessageId = messageId;
        Offset = offset;
        Found = found;
    }

    /// <summary>The rule; <see cref="LlrpRule.None"/> when nothing is wrong.</summary>
    public LlrpRule Rule { get; }

    /// <summary>The type of the message it was found in.</summary>
    public LlrpMessageType MessageType { get; }

    /// <summary>The id of that message.</summary>
    public uint MessageId { get; }

    /// <summary>Where the broken part begins: bytes from the start of the stream.</summary>
    public long Offset { get; }

    /// <summary>What was found: a version, length, type, count, number or microseconds, as the rule needs.</summary>
    public ulong Found { get; }

    /// <summary>Whether the borders of the messages are lost, so that nothing behind it in the stream can be read. Otherwise the
    /// next message is read, because the length in the header of this one still says where it begins.</summary>
    public bool EndsStream => Rule is LlrpRule.UnsupportedVersion or LlrpRule.MessageTooShort or LlrpRule.MessageTooLong or LlrpRule.StreamCut;

    /// <summary>Sentence, message, place and what was found.</summary>
    /// <returns>One line of text; empty when nothing is wrong.</returns>
    public override string ToString() => Rule == LlrpRule.None ? "" : string.Create(
        CultureInfo.InvariantCulture,
        $"{LlrpRuleText.Sentence(Rule)} ({Rule}): message type {(int)MessageType}, id {MessageId}, byte {Offset}; found {Found}.");
}
