using ToolLedger.Kits;
using ToolLedger.Reads;

namespace ToolLedger.Reconciliation;

/// <summary>A session of a kit, whatever result tells of it. Ids of sessions may come again after years, so the start belongs to it.</summary>
internal readonly record struct LessonKey(SessionId Session, long FromTicks, KitId Kit);
