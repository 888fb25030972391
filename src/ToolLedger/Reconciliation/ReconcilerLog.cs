using Microsoft.Extensions.Logging;
using ToolLedger.Kits;

namespace ToolLedger.Reconciliation;

/// <summary>Log messages of this room. Ids 3000 to 3099.</summary>
internal static partial class ReconcilerLog
{
    [LoggerMessage(EventId = 3000, EventName = "KitReconciled", Level = LogLevel.Information, Message = "Kit {Kit} revision {Revision}: {Conclusion}")]
    public static partial void KitReconciled(ILogger logger, KitId kit, int revision, KitConclusion conclusion);
}
