using System;

namespace ToolLedger.Custody;

/// <summary>A receipt and what closed it.</summary>
internal sealed record ReceiptTenure(ToolReceipt Receipt, ReceiptClosure? Closure)
{
    internal DateTimeOffset? ClosedAt => Closure?.At;

    internal bool IsOpenAt(DateTimeOffset at) => Receipt.At <= at && (Closure is null || at < Closure.At);
}
