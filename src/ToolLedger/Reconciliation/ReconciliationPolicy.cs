using System;
using System.Buffers;
using System.Collections.Generic;
using System.Text.Json;
using ToolLedger.Calibration;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>The policies a reconciliation uses. What directives disagree about is here, never in code; every default is documented and ours.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class ReconciliationPolicy
{
    /// <summary>When a session is evidence.</summary>
    public SessionPolicy Sessions { get; init; } = new();

    /// <summary>What reads prove.</summary>
    public PresencePolicy Presence { get; init; } = new CountingPolicy();

    /// <summary>What people's evidence needs.</summary>
    public InventoryPolicy Inventory { get; init; } = new();

    /// <summary>Who may sign for what, and whether a kit is complete while tools of it are on receipts.</summary>
    public CustodyPolicy Custody { get; init; } = new();

    /// <summary>What marks look like; lists that do not follow it are told.</summary>
    public MarkFormat Marks { get; init; } = MarkFormat.Any;

    /// <summary>How due dates are read.</summary>
    public CalibrationPolicy Calibration { get; init; } = new();

    /// <summary>When patterns become findings.</summary>
    public FindingPolicy Findings { get; init; } = new();

    /// <summary>The site's dates and clock offsets.</summary>
    public SiteCalendar Calendar { get; init; } = SiteCalendar.Utc;

    /// <summary>Digest of these policies and of the rules a reconciler applies beside them, over canonical JSON.</summary>
    /// <param name="rules">The rules, in any order.</param>
    /// <returns>The digest.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="rules"/> is null.</exception>
    public Digest DigestWith(IReadOnlyList<IReconciliationRule> rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer))
        {
            writer.WriteStartObject();
            writer.WriteString("schema"u8, "toolledger/reconciliation-policy/1"u8);
            writer.WritePropertyName("sessions"u8);
            Sessions.WriteJson(writer);
            writer.WritePropertyName("presence"u8);
            Presence.WriteJson(writer);
            writer.WritePropertyName("inventory"u8);
            Inventory.WriteJson(writer);
            writer.WritePropertyName("custody"u8);
            Custody.WriteJson(writer);
            writer.WritePropertyName("marks"u8);
            Marks.WriteJson(writer);
            writer.WritePropertyName("calibration"u8);
            Calibration.WriteJson(writer);
            writer.WritePropertyName("findings"u8);
            Findings.WriteJson(writer);
            writer.WritePropertyName("calendar"u8);
            Calendar.WriteJson(writer);
            WriteRules(writer, rules);
            writer.WriteEndObject();
        }

        return Digest.Of(CanonicalJson.Canonicalize(buffer.WrittenSpan));
    }

    private static void WriteRules(Utf8JsonWriter writer, IReadOnlyList<IReconciliationRule> rules)
    {
        var sorted = new SortedDictionary<string, IReconciliationRule>(StringComparer.Ordinal);
        foreach (IReconciliationRule rule in rules)
        {
            sorted.Add(rule.Name, rule);
        }

        writer.WriteStartArray("rules"u8);
        foreach (IReconciliationRule rule in sorted.Values)
        {
            writer.WriteStartObject();
            writer.WriteString("name"u8, rule.Name);
            writer.WriteString("version"u8, rule.Version);
            writer.WriteString("settings"u8, rule.Settings);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}
