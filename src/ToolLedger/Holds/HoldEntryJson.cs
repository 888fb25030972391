using ToolLedger.Custody;

namespace ToolLedger.Holds;

/// <summary>Reads entries about holds by the word for their kind.</summary>
internal static class HoldEntryJson
{
    /// <summary>False if the kind is not of this room; true with null if a member is wrong.</summary>
    internal static bool TryRead(EntryFields fields, out HoldEntry? entry)
    {
        bool isKnown = true;
        entry = null;
        switch (fields.Kind)
        {
            case HoldKinds.MissingDeclaration: entry = MissingDeclaration.Read(fields); break;
            case HoldKinds.HoldPlacement: entry = HoldPlacement.Read(fields); break;
            case HoldKinds.HoldNarrowing: entry = HoldNarrowing.Read(fields); break;
            case HoldKinds.HoldNotification: entry = HoldNotification.Read(fields); break;
            case HoldKinds.SearchStep: entry = SearchStep.Read(fields); break;
            case HoldKinds.SearchDiscontinuation: entry = SearchDiscontinuation.Read(fields); break;
            case HoldKinds.FoundDeclaration: entry = FoundDeclaration.Read(fields); break;
            case HoldKinds.FoundWithdrawal: entry = FoundWithdrawal.Read(fields); break;
            case HoldKinds.LeftInPlace: entry = LeftInPlace.Read(fields); break;
            case HoldKinds.DropRecord: entry = DropRecord.Read(fields); break;
            case HoldKinds.ItemRecovery: entry = ItemRecovery.Read(fields); break;
            case HoldKinds.HoldRelease: entry = HoldRelease.Read(fields); break;
            default: isKnown = false; break;
        }

        return isKnown;
    }
}
