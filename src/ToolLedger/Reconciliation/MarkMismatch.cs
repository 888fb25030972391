using ToolLedger.Inventory;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>A sighting that read another mark than that of the tool its tag says: what it was taken for, and whose mark it was where one tool has it.</summary>
internal readonly record struct MarkMismatch(Sighting Sighting, ToolId Claimed, ToolId? Found);
