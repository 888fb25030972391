using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>One recorded fact about who answers for what: an issue, a turn-in, a transfer, a receipt, a visit to a job, a zone log entry, a use.</summary>
/// <remarks>What an entry does is decided where the entries before it are known. Immutable and thread-safe.</remarks>
public abstract class CustodyEntry : RecordEntry
{
    private protected CustodyEntry()
    {
    }
}
