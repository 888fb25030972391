using System;
using System.Collections.Generic;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>What a rule may look at when it judges one line. Calibration is not among it: accountability and serviceability are two answers.</summary>
/// <remarks>Lives only during the call. A test of a rule builds one with an object initializer.</remarks>
public readonly ref struct LineFacts
{
    /// <summary>Makes empty facts, to be filled by an object initializer.</summary>
    public LineFacts()
    {
    }

    /// <summary>The manifest the kit is checked against.</summary>
    public required KitManifest Manifest { get; init; }

    /// <summary>The line.</summary>
    public required ManifestLine Line { get; init; }

    /// <summary>The instant the answer is for.</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>True where at least one session of this kit is valid or degraded and counts.</summary>
    public bool HasUsableSession { get; init; }

    /// <summary>The tags that were live on the line's tool while the kit was presented, or at the as-of instant where it was not.</summary>
    public IReadOnlyList<TagBinding> LiveTags { get; init; } = [];

    /// <summary>The looks of the best-read live tag; null without a live tag or a usable session.</summary>
    public PresenceEvidence? BestEvidence { get; init; }

    /// <summary>The presence policy's answer for that tag; null without a live tag or a usable session.</summary>
    public PresenceJudgement? Presence { get; init; }

    /// <summary>Why the reads settle nothing although the policy would accept them (another place explains them better, a later session was silent), or null.</summary>
    public Reason? ReadsWithheld { get; init; }

    /// <summary>Why the tool's identity is in doubt and no sighting by its own mark has settled it since; empty where it is not.</summary>
    public IReadOnlyList<Reason> IdentityDoubts { get; init; } = [];

    /// <summary>The same, as far as only sessions say so that cannot be used: they settle nothing, and what they heard against the tool stands until a sighting by its own mark. Empty where there is none.</summary>
    public IReadOnlyList<Reason> StandingDoubts { get; init; } = [];

    /// <summary>The latest sighting by the tool's own mark that counts, or null.</summary>
    public Sighting? Sighting { get; init; }

    /// <summary>The latest count of the line in its own unit that counts, or null.</summary>
    public LineCount? Count { get; init; }

    /// <summary>How much of the line is known to be short by an annotation that counts, in the unit of the line; 0 (the default) if nothing.</summary>
    public decimal KnownShort { get; init; }

    /// <summary>What is expected now: the quantity of the line less what is known to be short, never below 0.</summary>
    public Quantity Expected => KnownShort == 0 ? Line.Expected : new Quantity(decimal.Max(0, Line.Expected.Amount - KnownShort), Line.Expected.Unit);

    /// <summary>What a person stated about the parts that <see cref="Count"/> holds, or null if it holds none.</summary>
    public JoiningStatement? Joining { get; init; }

    /// <summary>What was counted, joined parts included; null without a count.</summary>
    public Quantity? Counted => Count is not { } count ? null
        : Joining is { } joining ? new Quantity(count.Quantity.Amount + joining.Wholes, count.Quantity.Unit)
        : count.Quantity;

    /// <summary>The balance of a consumable that was counted; null for other lines and without a count.</summary>
    public ConsumableBalance? Balance { get; init; }

    /// <summary>The number of pieces the tool is in, where breakages or reconstructions have raised it; 0 (the default) for the number of the manifest.</summary>
    public int PiecesEstablished { get; init; }

    /// <summary>True where somebody stated that the number of pieces is not known and no reconstruction that counts has settled it since.</summary>
    public bool IsPieceNumberUnknown { get; init; }

    /// <summary>True where several tools of the kit carry the mark of this one, so that it identifies none of them.</summary>
    public bool IsMarkShared { get; init; }

    /// <summary>Why counts that the line needs settle nothing (the policy asks for a second person); empty where they do.</summary>
    public IReadOnlyList<Reason> Unwitnessed { get; init; } = [];

    /// <summary>The latest count of the tool's pieces that counts, or null.</summary>
    public PieceCount? Pieces { get; init; }

    /// <summary>For a sub-kit, the conclusions of the lines inside; empty where there are none or nothing says what it holds.</summary>
    public IReadOnlyList<LineConclusion> Inner { get; init; } = [];

    /// <summary>For a sub-kit, why what is known of its lines settles nothing (its manifest is not at hand, or not in force), or null.</summary>
    public Reason? SubKitDoubt { get; init; }

    /// <summary>For a line inside a sub-kit, the seal that stands for it, accepted by the policy, or null.</summary>
    public SealRecord? Seal { get; init; }

    /// <summary>The open receipt that places the tool elsewhere, signed by its receiver, or null.</summary>
    public ToolReceipt? Receipt { get; init; }

    /// <summary>For a line inside a sub-kit, why a seal on record does not stand for it, or null.</summary>
    public Reason? SealDoubt { get; init; }

    /// <summary>What was said about the line but is no evidence for it, and why (another unit, too old, a mark that identifies no tool).</summary>
    public IReadOnlyList<Reason> Remarks { get; init; } = [];

    /// <summary>The bases that hold, the one named first in front; for a set, the bases of its container come after its count.</summary>
    public IReadOnlyList<AccountingBasis> Bases { get; init; } = [];
}
