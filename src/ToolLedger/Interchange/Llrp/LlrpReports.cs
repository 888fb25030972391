using System;

namespace ToolLedger.Interchange.Llrp;

/// <summary>The tag reports of one message, read one after another.</summary>
/// <remarks>A report that breaks a rule is given with its fault, and the next one is read, as long as the length of the broken one says where
/// it ends. Parameters that are no tag reports are skipped by their length. A copy reads on by itself from where it was copied. Not thread-safe.</remarks>
public ref struct LlrpReports
{
    private readonly LlrpMessage _message;
    private int _next;

    internal LlrpReports(LlrpMessage message)
    {
        _message = message;
        _next = message.Type == LlrpMessageType.RoAccessReport ? 0 : message.Body.Length;
    }

    /// <summary>The bytes of the message that are not read yet.</summary>
    internal readonly ReadOnlySpan<byte> Rest => _message.Body[_next..];

    /// <summary>Reads the next tag report.</summary>
    /// <param name="report">The report; look at its fault before its values.</param>
    /// <returns>False at the end of the message.</returns>
    public bool TryRead(out LlrpTagReport report)
    {
        var reader = new LlrpParameterReader(_message.Body, _next);
        while (reader.TryRead())
        {
            if (reader is { Type: LlrpParameterType.TagReportData, IsFixed: false })
            {
                _next = reader.End;
                report = new LlrpTagReport(_message, reader.Start, reader.End);
                return true;
            }
        }

        _next = _message.Body.Length;
        report = reader.Rule == LlrpRule.None ? default : new LlrpTagReport(_message.FaultAt(reader.Rule, reader.Start, (ulong)reader.Found));
        return reader.Rule != LlrpRule.None;
    }

    internal void Skip(int length) => _next += length;
}
