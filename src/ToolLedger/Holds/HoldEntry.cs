using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>One recorded fact about something that cannot be found, was found, or was left where it is.</summary>
/// <remarks>What an entry does is decided where the entries before it are . Immutable and thread-safe.</remarks>
public abstract class HoldEntry : RecordEntry
{
    private protected HoldEntry()
    {
    }
}
