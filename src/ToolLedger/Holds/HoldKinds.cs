namespace ToolLedger.Holds;

/// <summary>The stable words for the kinds of entries about holds.</summary>
internal static class HoldKinds
{
    internal const string MissingDeclaration = "missing-declaration";
    internal const string HoldPlacement = "hold-placement";
    internal const string HoldNarrowing = "hold-narrowing";
    internal const string HoldNotification = "hold-notification";
    internal const string SearchStep = "search-step";
    internal const string SearchDiscontinuation = "search-discontinuation";
    internal const string FoundDeclaration = "found-declaration";
    internal const string FoundWithdrawal = "found-withdrawal";
    internal const string LeftInPlace = "left-in-place";
    internal const string DropRecord = "drop-record";
    internal const string ItemRecovery = "item-recovery";
    internal const string HoldRelease = "hold-release";
}
