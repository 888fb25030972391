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
    public static void AddChips(TagBinding binding, TagEvidence evidence, ref SortedSet<string>? chips, ToolReads reads)
    {
        if (evidence.TidSpan.IsEmpty && chips is null)
        {
            return;
        }

        chips ??= new SortedSet<string>(StringComparer.Ordinal);
        DateTimeOffset at = evidence.LastSeen!.Value;
        foreach (Tid chip in evidence.TidSpan)
        {
            chips.Add(chip.ToString());
            if (!binding.Tid.IsEmpty && chip != binding.Tid)
            {
                reads.AddDoubt(new IdentityDoubt(
                    new Reason(ReconciliationReasons.WrongChip, ("tag", binding.Tag.ToString()), ("read", chip.ToString()), ("bound", binding.Tid.ToString())), at));
            }
        }

        if (chips.Count > 1)
        {
            string all = string.Join(", ", chips) + (evidence.HasMoreTids ? ", ..." : "");
            reads.AddDoubt(new IdentityDoubt(new Reason(ReconciliationReasons.TwoChips, ("tag", binding.Tag.ToString()), ("tids", all)), at));
        }
    }

    /// <summary>Doubts a tag that spoke while its binding was not in force.</summary>
    public static void DoubtBinding(ReconciliationScope scope, TagBinding binding, TagEvidence evidence, ToolReads reads)
    {
        if (evidence is not { FirstSeen: { } first, LastSeen: { } last } || last < binding.From)
        {
            return;
        }

        string tag = binding.Tag.ToString();
        if (binding.Until is not { } until || first < until)
        {
            reads.AddDoubt(new IdentityDoubt(new Reason(ReconciliationReasons.BindingChanged, ("tag", tag)), last));
        }
        else if (scope.Input.Tags.FindLive(binding.Tag, last) is null)
        {
            // A tag that was bound anew after retirement speaks for its new binding instead.
            reads.AddDoubt(new IdentityDoubt(new Reason(ReconciliationReasons.RetiredTagRead, ("tag", tag), ("at", scope.Time(last))), last));
        }
    }
}
