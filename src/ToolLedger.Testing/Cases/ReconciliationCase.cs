using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Globalization;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Cases;

/// <summary>The facts of one reconciliation, all in the open: lists, tags, sessions with their reads, what people said. A test changes them with <c>with</c> and compares the answers.</summary>
/// <remarks>Lists are compared by reference. Immutable and thread-safe as long as nobody changes the lists it was given.</remarks>
public sealed record ReconciliationCase
{
    /// <summary>The manifests of all kits; one revision of a kit at most once.</summary>
    public required IReadOnlyList<KitManifest> Manifests { get; init; }

    /// <summary>The kit under check.</summary>
    public required KitId Subject { get; init; }

    /// <summary>Which tag is on which tool, from when to when.</summary>
    public IReadOnlyList<TagBinding> Bindings { get; init; } = [];

    /// <summary>Which bindings are doubted, and which of these doubts were cleared.</summary>
    public IReadOnlyList<BindingQuarantine> Quarantines { get; init; } = [];

    /// <summary>What past sessions say of each tag.</summary>
    public IReadOnlyDictionary<TagId, TagHistory> History { get; init; } = ReadOnlyDictionary<TagId, TagHistory>.Empty;

    /// <summary>The read sessions of this kit and of others.</summary>
    public IReadOnlyList<SessionCase> Sessions { get; init; } = [];

    /// <summary>What people said.</summary>
    public InventoryEntries Entries { get; init; } = new();

    /// <summary>Calibration records.</summary>
    public IReadOnlyList<CalibrationRecord> Calibrations { get; init; } = [];

    /// <summary>Issues, receipts and the other entries of custody.</summary>
    public IReadOnlyList<CustodyEntry> Custody { get; init; } = [];

    /// <summary>The instant the answer is for.</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>The manifest of the subject in force at <see cref="AsOf"/>, or null.</summary>
    public KitManifest? Manifest => Manifests
        .Where(manifest => manifest.Id == Subject && manifest.EffectiveFrom <= AsOf)
        .MaxBy(static manifest => manifest.Revision);

    /// <summary>Closes every session and hands everything to the reconciler's input.</summary>
    /// <param name="policy">When a session is usable; that of the reconciliation policy, or its sessions are not used.</param>
    /// <returns>A new input.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="policy"/> is null.</exception>
    /// <exception cref="RecordException">The facts contradict each other: a tag on two tools at one instant, a revision given twice.</exception>
    public ReconciliationInput ToInput(SessionPolicy policy)
    {
        ArgumentNullException.ThrowIfNull(policy);
        return ToInput(session => session.Close(policy), CustodyPolicy.Default);
    }

    /// <summary>Closes every session and hands everything to the reconciler's input, with custody judged by the policy too.</summary>
    /// <param name="policy">The policy of the reconciliation.</param>
    /// <returns>A new input.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="policy"/> is null.</exception>
    /// <exception cref="RecordException">The facts contradict each other: a tag on two tools at one instant, a revision given twice.</exception>
    public ReconciliationInput ToInput(ReconciliationPolicy policy)
    {
        ArgumentNullException.ThrowIfNull(policy);
        return ToInput(session => session.Close(policy.Sessions), policy.Custody);
    }

    internal ReconciliationInput ToInput(Func<SessionCase, ReadSession> close, CustodyPolicy custody)
    {
        var kits = new KitRegister(Manifests);
        return ToInput(close, kits, Custody.Count == 0 ? CustodyRegister.Empty : new CustodyRegister(custody, kits, new CustodyLog(Custody)));
    }

    private ReconciliationInput ToInput(Func<SessionCase, ReadSession> close, KitRegister kits, CustodyRegister custody) => new()
    {
        Kits = kits,
        Custody = custody,
        Subject = Subject,
        Sessions = [.. Sessions.Select(close)],
        Tags = new TagRegister(Bindings, Quarantines),
        History = History,
        Inventory = new InventorySheet(Entries),
        Calibration = new CalibrationRegister(Calibrations),
        AsOf = AsOf,
    };

    /// <summary>The facts, one a line.</summary>
    /// <returns>English text.</returns>
    public override string ToString()
    {
        var lines = new List<string> { $"kit {Subject} as of {CaseText.Time(AsOf)}" };
        foreach (KitManifest manifest in Manifests)
        {
            lines.Add($"manifest {manifest.Id} revision {Text(manifest.Revision)} from {CaseText.Time(manifest.EffectiveFrom)}");
            lines.AddRange(manifest.Lines.Select(static line => "  " + line + (line.Tool is { } tool ? $", {tool.Id}, mark {tool.Mark ?? "none"}, pieces {Text(tool.PieceCount)}" : "")));
        }

        lines.AddRange(Bindings.Select(static binding => $"tag {binding.Tag}{(binding.Tid.IsEmpty ? "" : " chip " + binding.Tid)} on {binding.Tool} from {CaseText.Time(binding.From)} until {(binding.Until is { } until ? CaseText.Time(until) : "now")}"));
        lines.AddRange(Sessions.Select(static session => session.ToString()));
        lines.AddRange(Entries.Sightings.Select(static one => $"{one.By} saw {one.Tool} at {CaseText.Time(one.At)}, {one.Where}, mark {one.MarkRead}{(one.InKit.IsEmpty ? "" : ", in kit " + one.InKit)}"));
        lines.AddRange(Entries.Counts.Select(static one => $"{one.By} counted {one.Quantity}{(one.Parts > 0 ? $" and {Text(one.Parts)} parts" : "")} for line {Text(one.LineNumber)} of {one.Kit} at {CaseText.Time(one.At)}{Witnessed(one.Witness)}"));
        lines.AddRange(Entries.PieceCounts.Select(static one => $"{one.By} counted {(one.Pieces is { } pieces ? Text(pieces) : "an unknown number of")} pieces of {one.Tool} at {CaseText.Time(one.At)}{Witnessed(one.Witness)}"));
        lines.AddRange(Entries.Openings.Select(static one => $"{one.By} opened {one.Kit} at {CaseText.Time(one.At)}"));
        lines.AddRange(CaseText.Records(Entries));
        lines.AddRange(Quarantines.Select(static one => $"tag {one.Tag} on {one.Tool} in quarantine from {CaseText.Time(one.From)}{(one.ClearedAt is { } cleared ? ", cleared at " + CaseText.Time(cleared) : "")}"));
        lines.AddRange(Custody.Select(static one => CaseText.Custody(one)));
        lines.AddRange(Entries.Signatures.Select(static one => $"{one.By} signed at {CaseText.Time(one.At)}"));
        lines.AddRange(Calibrations.Select(static one => $"{one.Tool} calibrated on {Day(one.CalibratedOn)}, due {(one.Due is { } due ? Day(due) : "on no day")}, entered at {CaseText.Time(one.RecordedAt)}"));
        return string.Join('\n', lines);
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Day(DateOnly day) => day.ToString("O", CultureInfo.InvariantCulture);

    private static string Witnessed(PersonId witness) => witness.IsEmpty ? "" : ", witness " + witness;
}
