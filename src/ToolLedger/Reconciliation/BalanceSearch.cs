using System;
using System.Collections.Generic;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Balances a counted consumable with the job records that count: the latest of each job (a job number written otherwise is the same job), in the line's unit, of this issue, no later than the count.</summary>
internal sealed class BalanceSearch(ReconciliationScope scope, KitManifest manifest)
{
    /// <summary>The records that count, the latest of each job.</summary>
    public IReadOnlyList<ConsumableUse> FindUses(ConsumableLine line, List<Reason> remarks)
    {
        IReadOnlyList<ConsumableUse> records = scope.People.UsesOf(manifest.Id, line.Number);
        if (records.Count == 0)
        {
            return [];
        }

        var used = new List<ConsumableUse>();
        HashSet<string>? jobs = null;
        foreach (ConsumableUse use in records)
        {
            string? why = use.Unit != line.Expected.Unit ? "it is in another unit than the line"
                : use.At < manifest.EffectiveFrom ? "it is older than this revision of the manifest"
                : scope.AsOf - use.At > scope.Policy.Inventory.JobRecordAgeMax ? "it is older than the policy allows"
                : (jobs ??= new HashSet<string>(StringComparer.Ordinal)).Add(FoldedText.Of(use.Job)) ? null
                : "a later record of the job replaces it";
            if (why is null)
            {
                used.Add(use);
            }
            else
            {
                remarks.Add(new Reason(PeopleReasons.UseNotUsed, ("job", use.Job), ("by", use.By.Value), ("at", scope.Time(use.At)), ("why", why)));
            }
        }

        return used;
    }

    /// <summary>Whether another record of the same job and instant says that other amounts were taken out than one that counts.</summary>
    public bool AreDisputed(IReadOnlyList<ConsumableUse> uses)
    {
        foreach (ConsumableUse use in uses)
        {
            foreach (ConsumableUse other in scope.People.UsesOf(manifest.Id, use.LineNumber))
            {
                if (other.At == use.At && other.Unit == use.Unit && other.Used + other.Scrapped != use.Used + use.Scrapped
                    && string.Equals(FoldedText.Of(other.Job), FoldedText.Of(use.Job), StringComparison.Ordinal))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>What was taken out after the count, or at its very instant, was counted as still there: such a count no longer says what is there.</summary>
    public Reason? WhyCountedTooEarly(LineCount count, IReadOnlyList<ConsumableUse> uses)
        => uses.Count > 0 && uses[0].At >= count.At
            ? new Reason(PeopleReasons.UsedSinceCounted, ("by", count.By.Value), ("job", uses[0].Job), ("at", scope.Time(uses[0].At)))
            : null;

    /// <summary>What is no longer expected to be counted.</summary>
    public static decimal TakenOut(IReadOnlyList<ConsumableUse> uses)
    {
        decimal sum = 0;
        foreach (ConsumableUse use in uses)
        {
            sum += use.Used + use.Scrapped;
        }

        return sum;
    }

    public static ConsumableBalance Of(decimal issued, Quantity returned, IReadOnlyList<ConsumableUse> uses)
    {
        decimal used = 0;
        decimal scrapped = 0;
        foreach (ConsumableUse use in uses)
        {
            used += use.Used;
            scrapped += use.Scrapped;
        }

        return new ConsumableBalance
        {
            Unit = returned.Unit,
            Issued = issued,
            Used = used,
            Returned = returned.Amount,
            Scrapped = scrapped,
            JobCount = uses.Count,
        };
    }
}
