namespace ToolLedger.Reconciliation;

/// <summary>What the register says of a tag at the time it was read.</summary>
internal enum TagReadingKind
{
    ControlTag,
    Live,
    Retired,
    Reencoded,
    Unknown,
}
