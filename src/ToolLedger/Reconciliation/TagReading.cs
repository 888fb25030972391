using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>One tag of one session with what the register says of it, independent of the kit under check.</summary>
internal readonly record struct TagReading(TagEvidence Evidence, TagReadingKind Kind, TagBinding? Binding, ToolId? Tool, KitId? Kit);
