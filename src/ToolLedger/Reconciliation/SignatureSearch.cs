using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Inventory;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Which signatures cover an inventory. A signature covers what was there to sign: one older than the latest entry that counts for the kit, or of its very instant, does not count.</summary>
internal sealed class SignatureSearch
{
    /// <summary>What a finding calls a signature that does not count.</summary>
    internal const string What = "the signature";

    private readonly ReconciliationScope scope;
    private readonly DateTimeOffset latest;
    private readonly IReadOnlyList<PersonId> counters;

    public SignatureSearch(ReconciliationScope scope, IReadOnlyList<LineConclusion> lines)
    {
        this.scope = scope;
        latest = lines.Max(static line => line.Evidence.LatestAt) ?? DateTimeOffset.MinValue;
        counters = scope.Policy.Inventory.CounterMaySign ? [] : [.. lines.SelectMany(static line => line.Evidence.Persons).Distinct()];
    }

    public static bool IsOfRole(InventoryPolicy policy, Signature signature)
        => policy.RolesThatMaySign.Count == 0 || policy.RolesThatMaySign.Contains(signature.Role);

    public List<Signature> Used() => [.. scope.Input.Inventory.Signatures.Where(signature => WhyNot(signature) is null)];

    /// <summary>Why a signature does not count, or null.</summary>
    public string? WhyNot(Signature signature)
        => signature.At > scope.AsOf ? "it is later than the instant this answer is for"
            : signature.At <= latest || scope.AsOf - signature.At > scope.Policy.Inventory.EvidenceAgeMax
                ? "it is older than the last count or sighting it would have to cover, or than the policy allows"
            : !IsOfRole(scope.Policy.Inventory, signature) ? "the policy does not name its role among those that may sign"
            : counters.Any(person => PersonCount.AreSame(person, signature.By)) ? "the policy bans signing for what one has sighted, counted or witnessed"
            : null;
}
