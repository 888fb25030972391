using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>A tag that was certainly presented in a session: on which tool, whether it was read, and its strongest look.</summary>
internal readonly record struct TagObservation(ToolId Tool, bool IsRead, Rssi? Strongest);
