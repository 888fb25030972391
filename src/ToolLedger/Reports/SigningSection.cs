using System;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>Who may sign, who has signed, and what is later than that.</summary>
internal sealed class SigningSection(ReportVoice voice, IReportPage page, ReconciliationResult result)
{
    /// <summary>The gap a signer fills.</summary>
    internal const string Room = "____________";

    private const int PersonsAsked = 2;

    private int SignerCount => PersonCount.Of(result.Signatures.Select(static signature => signature.By));

    /// <summary>What the gate leaves out: it is satisfied by evidence, whoever has signed.</summary>
    internal string BesideGate() => voice.Say(
        SignerCount >= PersonsAsked ? ReportSentences.GateSignedByTwo : ReportSentences.GateNotSignedByTwo,
        ("count", ReportVoice.Text(SignerCount)));

    internal void PutWho(string number)
    {
        page.Heading(3, number + voice.Say(ReportSentences.Who));
        Signature[] older = Opening is { } opening ? [.. result.Signatures.Where(signature => signature.At <= opening.At)] : [];
        page.Paragraph(voice.Say(SignerCount >= PersonsAsked ? ReportSentences.TwoSigned : ReportSentences.NotTwoSigned, ("count", ReportVoice.Text(SignerCount)))
            + Limits(older.Length) + " " + TookPart() + " " + MaySign());
        int since = PersonCount.Of(result.Signatures.Except(older).Select(static signature => signature.By));
        page.SignHere(voice.Say(ReportSentences.SignHere, ("room", Room)), Math.Max(1, PersonsAsked - since));
    }

    /// <summary>The last opening of the kit, of what is in it or of what it is in.</summary>
    private KitOpening? Opening => result.Openings is [var latest, ..] ? latest : null;

    /// <summary>What signatures do not say, however many there are.</summary>
    private string Limits(int olderCount)
    {
        int open = result.ChaseList.Count;
        string ofLines = open > 0 && SignerCount > 0 ? " " + voice.Say(ReportSentences.SignedWithOpen, ("count", ReportVoice.Text(open))) : "";
        return olderCount == 0 ? ofLines : ofLines + " " + voice.Say(
            ReportSentences.SignedBeforeOpening, ("count", ReportVoice.Text(olderCount)), ("kit", Opening!.Kit.Value), ("at", voice.Time(Opening.At)));
    }

    internal void PutChanges(string number)
    {
        page.Heading(3, number + voice.Say(ReportSentences.Changed));
        if (result.Signatures.Count == 0)
        {
            page.Paragraph(voice.Say(ReportSentences.NothingSigned));
            return;
        }

        DateTimeOffset signed = result.Signatures.Min(static signature => signature.At);
        string[] later = [.. LaterEvents.Than(signed, voice, result).Select(voice.Say)];
        page.Paragraph(voice.Say(later.Length > 0 ? ReportSentences.ChangedSince : ReportSentences.NothingChanged, ("at", voice.Time(signed))));
        page.Items(later);
    }

    private string TookPart()
    {
        string nobody = voice.Say(ReportSentences.Nobody);
        string persons = string.Join(", ", result.Persons.Select(static person => person.Value));
        string signatures = string.Join(", ", result.Signatures.Select(signature => signature.Role.IsEmpty
            ? $"{signature.By.Value} {voice.Time(signature.At)}"
            : $"{signature.By.Value} ({signature.Role.Value}) {voice.Time(signature.At)}"));
        string counted = voice.Say(
            ReportSentences.Persons,
            ("persons", persons.Length > 0 ? persons : nobody),
            ("signatures", signatures.Length > 0 ? signatures : nobody));
        string[] others = [.. result.Findings.Select(static finding => finding.Reason).Where(IsSignature).Select(SignedInVain)];
        return others.Length == 0 ? counted : $"{counted} {voice.Say(ReportSentences.SignedInVain, ("signatures", string.Join("; ", others)))}";
    }

    /// <summary>Is it the finding of a signature that does not count?</summary>
    private static bool IsSignature(Reason reason) =>
        reason.Kind == ReconciliationReasons.EntryNotUsed && string.Equals(ValueOf(reason, "what"), SignatureSearch.What, StringComparison.Ordinal);

    private string SignedInVain(Reason reason) => voice.Say(new Reason(
        ReportSentences.SignatureInVain, ("by", ValueOf(reason, "by")), ("at", ValueOf(reason, "at")), ("why", ValueOf(reason, "why"))));

    private static string ValueOf(Reason reason, string name) =>
        reason.Values.FirstOrDefault(pair => string.Equals(pair.Key, name, StringComparison.Ordinal)).Value ?? "";

    private string MaySign()
    {
        InventoryPolicy policy = result.Policy.Inventory;
        return voice.Say(
            ReportSentences.MaySign,
            ("roles", policy.RolesThatMaySign.Count == 0
                ? voice.Say(ReportSentences.AnyRole)
                : string.Join(", ", policy.RolesThatMaySign.Select(static role => role.Value))),
            ("own", policy.CounterMaySign ? "" : voice.Say(ReportSentences.NotForOwn)),
            ("needed", ReportVoice.Text(policy.ManualInventoryPersonsNeeded)));
    }
}
