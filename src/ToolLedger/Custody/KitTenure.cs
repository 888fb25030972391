using System;

namespace ToolLedger.Custody;

/// <summary>From when on a kit is with a holder; until the next tenure of that kit.</summary>
internal sealed record KitTenure(DateTimeOffset From, CustodyHolder Holder, CustodyEntry Entry, KitIssue? Issue, DateTimeOffset? Due);
