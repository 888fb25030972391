using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Ledger;
using ToolLedger.Records;

namespace ToolLedger.Policies;

/// <summary>Opens a ledger from its entries alone: by the manifests and the policy that are stored in it.</summary>
/// <remarks>Stateless and thread-safe.</remarks>
public static class SiteLedger
{
    /// <summary>Opens a ledger.</summary>
    /// <param name="entries">The entries in any order.</param>
    /// <returns>The ledger, under the policy that was stored last (or the default one) and with every manifest that is stored.</returns>
    /// <exception cref="ArgumentNullException">The list or an entry is null.</exception>
    /// <exception cref="RecordException">A stored manifest or policy is refused, or the manifests do not go together.</exception>
    public static LedgerBook Open(IEnumerable<LedgerEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        LedgerEntry[] all = [.. entries];
        StoredRecord[] stored = [.. all.OrderBy(static entry => entry.RecordedAt).ThenBy(static entry => entry.Id.Value, StringComparer.Ordinal).Select(static entry => entry.Content).OfType<StoredRecord>()];
        KitRegister kits = new(Of(stored, KitManifest.Schema).Select(static record => KitManifest.Parse(record.Record.Span)));
        SitePolicy policy = Of(stored, SitePolicy.Schema).LastOrDefault() is { } last ? SitePolicy.Parse(last.Record.Span) : SitePolicy.Default;
        return new LedgerBook(policy.ToLedgerSettings(kits), all);
    }

    private static IEnumerable<StoredRecord> Of(StoredRecord[] stored, string schema) => stored.Where(record => string.Equals(record.RecordSchema, schema, StringComparison.Ordinal));
}
