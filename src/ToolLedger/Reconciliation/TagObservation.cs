using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>A tag that was certainly presented in a session: on which tool, whether it was read, its strongest look, and whether the session was the last of its shift.</summary>
internal readonly record struct TagObservation(ToolId Tool, bool IsRead, Rssi? Strongest, bool IsStep);
