using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Ledger;

/// <summary>What follows from the entries of a ledger: who answers, what was near what, what is held, what was signed, and what a person must look into. Ask any instant.</summary>
/// <remarks>A view of the book it was taken from: take it again after an entry was added. Not thread-safe while entries are added; safe to read from several threads otherwise.</remarks>
public sealed class LedgerState
{
    internal LedgerState(
        CustodyRegister custody, HoldRegister holds, ExposureMap exposure, IReadOnlyList<SignedReconciliation> signOffs, IReadOnlyList<Amendment> amendments, IReadOnlyList<LedgerFinding> findings)
    {
        Custody = custody;
        Holds = holds;
        Exposure = exposure;
        SignOffs = [.. signOffs];
        Amendments = [.. amendments];
        Findings = findings;
    }

    /// <summary>Who answers for what.</summary>
    public CustodyRegister Custody { get; }

    /// <summary>What is held.</summary>
    public HoldRegister Holds { get; }

    /// <summary>What things were near since they were last positively accounted for in a signed reconciliation.</summary>
    public ExposureMap Exposure { get; }

    /// <summary>The signed reconciliations, in the order signed.</summary>
    public IReadOnlyList<SignedReconciliation> SignOffs { get; }

    /// <summary>The amendments, in the order made.</summary>
    public IReadOnlyList<Amendment> Amendments { get; }

    /// <summary>What a person must look into.</summary>
    public IReadOnlyList<LedgerFinding> Findings { get; }

    /// <summary>The last sign-off of a kit up to an instant: how old what is known of its contents is.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>The sign-off, or null if there is none.</returns>
    public SignedReconciliation? LastSignOffOf(KitId kit, DateTimeOffset asOf) => SignOffs.LastOrDefault(signOff => signOff.Kit == kit && signOff.At <= asOf);

    /// <summary>The amendments of a sign-off.</summary>
    /// <param name="signOff">Its id.</param>
    /// <returns>The amendments, in the order made.</returns>
    public IReadOnlyList<Amendment> AmendmentsOf(EntryId signOff) => [.. Amendments.Where(amendment => amendment.Amends == signOff)];

    /// <summary>How many sign-offs, amendments and findings there are.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() =>
        $"{CountText.Of(SignOffs.Count, "sign-off")}, {CountText.Of(Amendments.Count, "amendment")}; {CountText.Of(Findings.Count, "finding")} to look into";
}
