using ToolLedger.Identifiers;

namespace ToolLedger.Reads;

/// <summary>The smallest two TIDs read of one tag. The second is empty while there is one only.</summary>
internal struct TidPair
{
    internal Tid First;
    internal Tid Second;
    internal bool HasMore;
}
