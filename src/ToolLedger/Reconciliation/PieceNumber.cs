using System;
using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Inventory;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>How many pieces a tool is in: the manifest's number, raised by breakages and reconstructions and lowered by nothing; not known after a tool shattered, until a reconstruction that counts.</summary>
internal readonly struct PieceNumber
{
    private PieceNumber(int known, bool isUnknown, DateTimeOffset? lastWord, bool isBroken)
    {
        Known = known;
        IsUnknown = isUnknown;
        LastWord = lastWord;
        IsBroken = isBroken;
    }

    public int Known { get; }

    public bool IsUnknown { get; }

    /// <summary>The last breakage or statement that the number is not known: a count of pieces before it says nothing.</summary>
    public DateTimeOffset? LastWord { get; }

    public bool IsBroken { get; }

    public static PieceNumber Of(ReconciliationScope scope, Tool tool, List<Reason> remarks)
    {
        int known = tool.PieceCount;
        DateTimeOffset? lastWord = null;
        DateTimeOffset? unknownAt = null;
        IReadOnlyList<Breakage> breakages = scope.People.BreakagesOf(tool.Id);
        foreach (Breakage breakage in breakages)
        {
            known = Math.Max(known, breakage.Pieces ?? 0);
            lastWord = Later(lastWord, breakage.At);
            unknownAt = breakage.Pieces is null ? Later(unknownAt, breakage.At) : unknownAt;
            string pieces = breakage.Pieces is { } number ? number.ToString(CultureInfo.InvariantCulture) : "an unknown number of";
            remarks.Add(new Reason(PeopleReasons.Broken, ("at", scope.Time(breakage.At)), ("by", breakage.By.Value), ("pieces", pieces)));
        }

        // A doubt does not grow old as evidence does: an unknown number stays unknown.
        foreach (PieceCount count in scope.People.PiecesOf(tool.Id))
        {
            unknownAt = count.Pieces is null ? Later(unknownAt, count.At) : unknownAt;
        }

        lastWord = unknownAt is { } unknown ? Later(lastWord, unknown) : lastWord;
        bool isUnknown = unknownAt is not null;
        foreach (Reconstruction reconstruction in scope.People.ReconstructionsOf(tool.Id))
        {
            if (WhyNot(scope, reconstruction) is { } why)
            {
                remarks.Add(Remark(scope, reconstruction, PeopleReasons.ReconstructionNotUsed, ("why", why)));
                continue;
            }

            known = Math.Max(known, reconstruction.Pieces);
            isUnknown &= reconstruction.SignedBy.At <= unknownAt;
            remarks.Add(Remark(scope, reconstruction, PeopleReasons.Reconstructed, ("decision", reconstruction.Decision)));
        }

        return new PieceNumber(known, isUnknown, lastWord, breakages.Count > 0);
    }

    private static string? WhyNot(ReconciliationScope scope, Reconstruction reconstruction)
    {
        InventoryPolicy policy = scope.Policy.Inventory;
        bool isAlone = reconstruction.Witness.IsEmpty || PersonCount.Of([reconstruction.SignedBy.By, reconstruction.Witness]) < 2;
        return isAlone && policy.ReconstructionPersonsNeeded > 1 ? "the policy asks for a second person"
            : SignatureSearch.IsOfRole(policy, reconstruction.SignedBy) ? null
            : "the policy does not name the role";
    }

    private static Reason Remark(ReconciliationScope scope, Reconstruction reconstruction, ReasonKind kind, (string, string) last) => new(
        kind,
        ("pieces", reconstruction.Pieces.ToString(CultureInfo.InvariantCulture)),
        ("by", reconstruction.SignedBy.By.Value),
        ("at", scope.Time(reconstruction.SignedBy.At)),
        last);

    private static DateTimeOffset Later(DateTimeOffset? one, DateTimeOffset other) => one is { } first && first > other ? first : other;
}
