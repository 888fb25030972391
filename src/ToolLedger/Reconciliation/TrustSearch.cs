using System;
using System.Collections.Generic;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Judges bindings by people's word: quarantines, and sightings whose mark and tag name two tools.</summary>
internal static class TrustSearch
{
    private static readonly BindingTrust Full = new(DateTimeOffset.MinValue, null, []);

    public static BindingTrust Of(ReconciliationScope scope, TagBinding binding, Tool tool, IReadOnlyList<MarkMismatch> mismatches)
    {
        IReadOnlyList<BindingQuarantine> quarantines = scope.Input.Tags.QuarantinesOf(binding);
        if (quarantines.Count == 0 && mismatches.Count == 0)
        {
            return Full;
        }

        DateTimeOffset from = DateTimeOffset.MinValue;
        DateTimeOffset cleared = DateTimeOffset.MinValue;
        Reason? withheld = null;
        var doubts = new List<IdentityDoubt>();
        foreach (BindingQuarantine quarantine in quarantines)
        {
            if (quarantine.StandsAt(scope.AsOf))
            {
                from = DateTimeOffset.MaxValue;
                withheld = new Reason(ReconciliationReasons.Quarantined, ("tag", binding.Tag.ToString()), ("tool", binding.Tool.Value),
                    ("by", quarantine.By.Value), ("at", scope.Time(quarantine.From)), ("why", quarantine.Reason));
                doubts.Add(new IdentityDoubt(withheld, quarantine.From) { IsWhichTool = true });
            }
            else if (quarantine.ClearedAt is { } end && end <= scope.AsOf && end > cleared)
            {
                cleared = end;
                withheld ??= new Reason(ReconciliationReasons.ReadBeforeClearing, ("tag", binding.Tag.ToString()), ("at", scope.Time(end)));
            }
        }

        from = from > cleared ? from : cleared;
        foreach (MarkMismatch mismatch in mismatches)
        {
            // A binding made, or found right, after the sighting has been looked at since.
            if (mismatch.Sighting.At >= binding.From && mismatch.Sighting.At >= cleared)
            {
                from = DateTimeOffset.MaxValue;
                Reason reason = Describe(mismatch, tool);
                withheld ??= reason;
                if (scope.AsOf - mismatch.Sighting.At <= scope.Policy.Inventory.EvidenceAgeMax)
                {
                    doubts.Add(new IdentityDoubt(reason, mismatch.Sighting.At) { IsWhichTool = true });
                }
            }
        }

        return new BindingTrust(from, withheld, doubts);
    }

    private static Reason Describe(MarkMismatch mismatch, Tool tool) => mismatch.Claimed == tool.Id
        ? new Reason(ReconciliationReasons.OtherMark, ("by", mismatch.Sighting.By.Value), ("read", mismatch.Sighting.MarkRead), ("mark", tool.Mark ?? "none on the manifest"))
        : new Reason(ReconciliationReasons.MarkOnOtherTool, ("by", mismatch.Sighting.By.Value), ("mark", mismatch.Sighting.MarkRead), ("other", mismatch.Claimed.Value));
}
