using System;
using System.Collections.Generic;
using ToolLedger.Identifiers;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>What a tag's own answers say against the tool it is bound to: other chips, a retired binding, a binding that changed meanwhile.</summary>
internal static class IdentityCheck
{
    /// <summary>Adds the chip numbers of a session to those known of the tag and doubts what does not fit.</summary>
    public static void AddChips(TagBinding binding, ReadSession session, TagEvidence evidence, ref ChipsSeen chips, ToolReads reads)
    {
        if (evidence.TidSpan.IsEmpty && chips.All is null)
        {
            return;
        }

        DateTimeOffset at = evidence.LastSeen!.Value;
        chips.Begin(session);
        foreach (Tid chip in evidence.TidSpan)
        {
            chips.Add(session, chip.ToString());
            if (!binding.Tid.IsEmpty && chip != binding.Tid)
            {
                reads.AddDoubt(new IdentityDoubt(
                    new Reason(ReconciliationReasons.WrongChip, ("tag", binding.Tag.ToString()), ("read", chip.ToString()), ("bound", binding.Tid.ToString())), at).SaidBy(session));
            }
        }

        if (chips.OfUsable is { Count: > 1 } told)
        {
            reads.AddDoubt(TwoChips(binding.Tag, told, evidence, at));
        }
        else if (chips.All is { Count: > 1 } all)
        {
            reads.AddDoubt(TwoChips(binding.Tag, all, evidence, at).SaidBy(chips.Unusable!));
        }
    }

    /// <summary>Doubts a tag that spoke while its binding was not in force.</summary>
    public static void DoubtBinding(ReconciliationScope scope, TagBinding binding, ReadSession session, TagEvidence evidence, ToolReads reads)
    {
        if (evidence is not { FirstSeen: { } first, LastSeen: { } last } || last < binding.From)
        {
            return;
        }

        string tag = binding.Tag.ToString();
        if (binding.Until is not { } until || first < until)
        {
            reads.AddDoubt(new IdentityDoubt(new Reason(ReconciliationReasons.BindingChanged, ("tag", tag)), last).SaidBy(session));
        }
        else if (scope.Input.Tags.FindLive(binding.Tag, last) is null)
        {
            // A tag that was bound anew after retirement speaks for its new binding instead.
            reads.AddRetiredRead(binding.Tag, new IdentityDoubt(new Reason(ReconciliationReasons.RetiredTagRead, ("tag", tag), ("at", scope.Time(last))), last).SaidBy(session));
        }
    }

    private static IdentityDoubt TwoChips(TagId tag, SortedSet<string> chips, TagEvidence evidence, DateTimeOffset at)
    {
        string all = string.Join(", ", chips) + (evidence.HasMoreTids ? ", ..." : "");
        return new IdentityDoubt(new Reason(ReconciliationReasons.TwoChips, ("tag", tag.ToString()), ("tids", all)), at);
    }

    /// <summary>The chip numbers that a tag answered with so far: in usable sessions, and in all of them.</summary>
    public struct ChipsSeen
    {
        public SortedSet<string>? OfUsable;
        public SortedSet<string>? All;
        public ReadSession? Unusable;

        public void Begin(ReadSession session)
        {
            if (session.IsUsable)
            {
                OfUsable ??= new SortedSet<string>(StringComparer.Ordinal);
                All ??= OfUsable;
            }
            else if (All is null || All == OfUsable)
            {
                // Most tags are never heard in a session that cannot be used, so that one set serves for both.
                All = new SortedSet<string>(All ?? [], StringComparer.Ordinal);
            }
        }

        public void Add(ReadSession session, string chip)
        {
            All!.Add(chip);
            if (session.IsUsable)
            {
                OfUsable!.Add(chip);
            }
            else
            {
                Unusable = session;
            }
        }
    }
}
