using System.Collections.Generic;
using System.Linq;
using ToolLedger.Holds;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <content>Holds with their clocks, and the sign-offs that turned out wrong.</content>
public sealed partial class LedgerReport
{
    /// <summary>The holds that stand, with what they affect, both clocks and what is still to be done; and what is left in place or dropped.</summary>
    /// <returns>The page.</returns>
    public LedgerPage OpenHolds() => Page(page =>
    {
        page.Title(Say(LedgerSentences.HoldsTitle, ("at", Time(asOf))));
        IReadOnlyList<HoldStatus> held = state.Holds.HeldAt(asOf);
        if (held.Count == 0)
        {
            page.Paragraph(Say(LedgerSentences.NoHold));
        }

        foreach (HoldStatus hold in held)
        {
            page.Heading(2, hold.Declaration.Id.Value);
            page.Rows("", "status", "hold", [.. RowsOf(hold)]);
        }

        IReadOnlyList<HoldEntry> carried = state.Holds.CarriedAt(asOf);
        if (carried.Count > 0)
        {
            page.Heading(2, Say(LedgerSentences.Carried));
            page.Rows("", "status", "item", [.. carried.Select(RowOf)]);
        }
    });

    /// <summary>The sign-offs that a found tool contradicts, and what is exposed again.</summary>
    /// <returns>The page.</returns>
    public LedgerPage ContradictedSignOffs() => Page(page =>
    {
        page.Title(Say(LedgerSentences.ContradictedTitle, ("at", Time(asOf))));
        bool isAny = false;
        foreach (FoundDeclaration found in state.Holds.FoundAt(asOf))
        {
            IReadOnlyList<ContradictedSignOff> wrong = SignOffReview.ContradictedBy(found, state.SignOffs);
            if (wrong.Count == 0)
            {
                continue;
            }

            isAny = true;
            page.Heading(2, Say(LedgerSentences.FoundHeading, ("tool", found.Tool.Value), ("at", Time(found.At)), ("where", WhereOf(found))));
            Exposure again = SignOffReview.Reopened(found, wrong, state.Exposure);
            page.Rows("", "status", "sign-off",
            [
                .. wrong.Select(one => new ReportRow("", "CONTRADICTED", Say(
                    LedgerSentences.Contradicted,
                    ("signOff", $"{one.SignOff.Id.Value} at {Time(one.SignOff.AsOf)}"),
                    ("kit", one.SignOff.Kit.Value),
                    ("state", one.SignOff.State),
                    ("by", string.Join(", ", one.SignOff.FurtherSignatures.Select(static signature => signature.By).Prepend(one.SignOff.By).Select(static person => person.Value))),
                    ("line", one.Line.ToString())))),
                new ReportRow("", "EXPOSED", Say(LedgerSentences.ExposedAgain, ("since", SinceOf(again.Since)), ("things", ThingsOf(again.Things)))),
            ]);
        }

        if (!isAny)
        {
            page.Paragraph(Say(LedgerSentences.NoContradiction));
        }
    });

    private IEnumerable<ReportRow> RowsOf(HoldStatus hold)
    {
        MissingDeclaration declared = hold.Declaration;
        yield return new ReportRow("", hold.IsImpound ? "IMPOUNDED" : "HELD", Say(
            LedgerSentences.Hold,
            ("what", declared.Tool.IsEmpty ? declared.Description : $"{declared.Description} ({declared.Tool.Value})"),
            ("by", declared.By.Value),
            ("at", Time(declared.At)),
            ("declared", ElapsedText.Of(hold.SinceDeclaration)),
            ("accounted", hold.SinceAccounting is { } elapsed ? ElapsedText.Of(elapsed) : Say(LedgerSentences.NotKnown))));
        yield return new ReportRow("", "AFFECTED", ThingsOf(hold.Affected));
        foreach (HoldNarrowing narrowing in hold.Narrowings)
        {
            yield return new ReportRow("", "NOT AFFECTED", Say(
                LedgerSentences.Narrowed,
                ("things", ThingsOf(narrowing.NotAffected)),
                ("by", narrowing.By.Value),
                ("role", narrowing.Role.Value),
                ("at", Time(narrowing.At)),
                ("why", narrowing.Decision)));
        }

        if (hold.Found is { } found)
        {
            yield return new ReportRow("", "FOUND", Say(LedgerSentences.FoundNotReleased, ("by", found.By.Value), ("at", Time(found.At)), ("where", WhereOf(found))));
        }

        if (hold.NotTold.Count > 0)
        {
            yield return new ReportRow("", "TO DO", Say(LedgerSentences.NotTold, ("who", string.Join(", ", hold.NotTold))));
        }

        if (hold.NotSearched.Count > 0)
        {
            yield return new ReportRow("", "TO DO", Say(LedgerSentences.NotSearched, ("steps", string.Join(", ", hold.NotSearched))));
        }

        foreach (Reason late in hold.Late)
        {
            yield return new ReportRow("", "LATE", voice.Say(late));
        }
    }

    private ReportRow RowOf(HoldEntry entry)
    {
        (string word, string what, string where) = entry switch
        {
            LeftInPlace left => ("LEFT IN PLACE", left.Location, left.Equipment.Value),
            DropRecord drop => ("DROPPED", $"{drop.Description}, {drop.Quantity}", drop.Where.IsEmpty ? drop.Equipment.Value : drop.Where.Value),
            _ => ("", "", ""),
        };
        return new ReportRow("", word, Say(LedgerSentences.CarriedItem, ("what", what), ("where", where), ("at", Time(entry.At)), ("by", entry.By.Value)));
    }

    private string ThingsOf(IReadOnlyList<AffectedThing> things) =>
        things.Count == 0 ? Say(LedgerSentences.NothingAffected) : Say(LedgerSentences.Affected, ("things", string.Join("; ", things)));

    private static string WhereOf(FoundDeclaration found) =>
        !found.Where.IsEmpty ? found.Where.Value : !found.Equipment.IsEmpty ? found.Equipment.Value : !found.InKit.IsEmpty ? "kit " + found.InKit.Value : "place not stated";
}
