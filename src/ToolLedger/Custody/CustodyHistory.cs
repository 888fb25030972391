using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Tools;

namespace ToolLedger.Custody;

/// <summary>Spans of custody of one tool: at every instant at which something changes, who answers from then on.</summary>
internal static class CustodyHistory
{
    internal static List<CustodySpan> Of(CustodyRegister register, CustodyState state, ToolId tool, DateTimeOffset asOf)
    {
        var spans = new List<CustodySpan> { new() { Holder = CustodyHolder.Of(register.Policy.ToolRoom), From = DateTimeOffset.MinValue } };
        foreach (DateTimeOffset at in ChangesOf(state, tool).Where(at => at <= asOf).Distinct().Order())
        {
            ReceiptTenure? on = state.ReceiptOf(tool, at);
            KitTenure? kit = on is null && state.KitOf(tool, at) is { } its ? state.HolderOf(its, at).Tenure : null;
            Append(spans, new CustodySpan
            {
                Holder = register.HolderOf(tool, at),
                From = at,
                Entry = on?.Receipt ?? kit?.Entry,
                Due = on is { Receipt: ToolLoan { Due: { } due } } ? due : kit?.Due,
            });
        }

        return spans;
    }

    /// <summary>Ends the last span where the next begins; of two at one instant the later stands.</summary>
    internal static void Append(List<CustodySpan> spans, CustodySpan next)
    {
        CustodySpan last = spans[^1];
        if (last.Holder == next.Holder && ReferenceEquals(last.Entry, next.Entry))
        {
            return;
        }

        if (last.From.UtcTicks == next.From.UtcTicks)
        {
            spans[^1] = next;
            return;
        }

        spans[^1] = new CustodySpan { Holder = last.Holder, From = last.From, Until = next.From, Entry = last.Entry, Due = last.Due };
        spans.Add(next);
    }

    private static IEnumerable<DateTimeOffset> ChangesOf(CustodyState state, ToolId tool)
    {
        foreach (ReceiptTenure receipt in state.ReceiptsOf(tool))
        {
            yield return receipt.Receipt.At;
            if (receipt.ClosedAt is { } closed)
            {
                yield return closed;
            }
        }

        foreach (KitManifest manifest in state.Kits.Manifests.Where(manifest => manifest.FindLine(tool) is not null))
        {
            yield return manifest.EffectiveFrom;
            foreach (KitTenure tenure in state.TenuresOf(manifest.Id))
            {
                yield return tenure.From;
            }

            foreach (KitManifest later in state.Kits.Manifests.Where(other => other.Id == manifest.Id))
            {
                yield return later.EffectiveFrom;
            }
        }
    }
}
