using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;

namespace ToolLedger.Holds;

/// <summary>Works out what could be affected: where kits and tools have been, by the custody entries, since each line was last positively accounted for.</summary>
/// <remarks>
/// A visit that ends at the instant of an accounting, or later, counts: a tool can be left between the look and the leaving. Receipts are accountings of their own: the signature of the receiver ends
/// the exposure of the giver and begins the receiver's. Immutable and thread-safe.
/// </remarks>
public sealed class ExposureMap
{
    private readonly CustodyRegister custody;
    private readonly bool sightingNeeded;
    private readonly ILookup<ToolId, PositiveAccounting> byTool;
    private readonly ILookup<(KitId, string), PositiveAccounting> byLine;

    /// <summary>Makes a map.</summary>
    /// <param name="custody">Who had what, and where it was.</param>
    /// <param name="accountings">Every positive accounting of every kit, in any order.</param>
    /// <param name="sightingNeeded">Whether only a sighting by mark ends an exposure; counts and reads then do not. False by default.</param>
    /// <exception cref="ArgumentNullException">An argument or an accounting is null.</exception>
    public ExposureMap(CustodyRegister custody, IEnumerable<PositiveAccounting> accountings, bool sightingNeeded = false)
    {
        ArgumentNullException.ThrowIfNull(custody);
        ArgumentNullException.ThrowIfNull(accountings);
        PositiveAccounting[] all = [.. accountings];
        foreach (PositiveAccounting accounting in all)
        {
            ArgumentNullException.ThrowIfNull(accounting, nameof(accountings));
        }

        this.custody = custody;
        this.sightingNeeded = sightingNeeded;
        Accountings = Array.AsReadOnly(all);
        byTool = all.Where(static one => !one.Tool.IsEmpty).ToLookup(static one => one.Tool);
        byLine = all.ToLookup(static one => (one.Kit, one.Label));
    }

    /// <summary>A map of nothing.</summary>
    public static ExposureMap Empty { get; } = new(CustodyRegister.Empty, []);

    /// <summary>The custody entries it looks at.</summary>
    public CustodyRegister Custody => custody;

    /// <summary>The accountings it looks at.</summary>
    public IReadOnlyList<PositiveAccounting> Accountings { get; }

    /// <summary>Receipts of which nobody can tell what they say, since their ids stand for several facts: they account for nothing, and what each of them names is looked at.</summary>
    internal IReadOnlyList<ToolReceipt> Disputed { get; init; } = [];

    /// <summary>The same map without the accountings of some sign-offs: those that turned out to be wrong.</summary>
    /// <param name="isWrong">Whether an accounting is left out.</param>
    /// <returns>A new map; no exposure of it is shorter.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="isWrong"/> is null.</exception>
    public ExposureMap Without(Predicate<PositiveAccounting> isWrong)
    {
        ArgumentNullException.ThrowIfNull(isWrong);
        return new ExposureMap(custody, Accountings.Where(one => !isWrong(one)), sightingNeeded) { Disputed = Disputed };
    }

    /// <summary>What a tool could be in.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>Everything it was near since its last positive accounting, on a receipt or with its kit.</returns>
    public Exposure Of(ToolId tool, DateTimeOffset asOf) => Of(tool, custody.KitOf(tool, asOf) ?? KitOfLast(tool, asOf), asOf);

    /// <summary>What the thing on a line could be in.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="label">The number of the line as reports print it.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>Everything it was near since the line was last positively accounted for; for a line with a tool, that of the tool.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="label"/> is null.</exception>
    public Exposure Of(KitId kit, string label, DateTimeOffset asOf)
    {
        ArgumentNullException.ThrowIfNull(label);
        if (ToolOf(kit, label, asOf) is { } tool)
        {
            return Of(tool, kit, asOf);
        }

        DateTimeOffset? since = LastOf(byLine[(kit, label)], asOf);
        return new Exposure(asOf, since, [.. ExposureTrail.OfKit(custody, kit, since, asOf)]);
    }

    /// <summary>What anything of a kit could be in: the lines of the manifest it is out under, each since it was last accounted for, together.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>The exposure; <see cref="Exposure.Since"/> is the earliest of the lines, and null if one was never accounted for.</returns>
    public Exposure OfKit(KitId kit, DateTimeOffset asOf)
    {
        Exposure[] lines = [.. (custody.ManifestOf(kit, asOf)?.Lines ?? []).Select(line => line.Tool is { } tool ? Of(tool.Id, kit, asOf) : Of(kit, Label(line), asOf))];
        DateTimeOffset? since = lines.Length == 0 || Array.Exists(lines, static line => line.Since is null) ? null : lines.Min(static line => line.Since);
        IEnumerable<ExposureItem> items = lines.Length == 0 ? ExposureTrail.OfKit(custody, kit, null, asOf) : lines.SelectMany(static line => line.Items);
        return new Exposure(asOf, since, [.. ExposureTrail.InOrder(items)]);
    }

    private Exposure Of(ToolId tool, KitId? kit, DateTimeOffset asOf)
    {
        DateTimeOffset? seen = LastOf(byTool[tool], asOf);
        IReadOnlyList<(ToolReceipt Receipt, ReceiptClosure? Closure)> receipts = custody.ReceiptsOf(tool, asOf);
        DateTimeOffset? signed = receipts is [.., var (last, closure)] ? closure?.At ?? last.At : null;
        DateTimeOffset? since = seen is null || signed > seen ? signed ?? seen : seen;
        IEnumerable<ExposureItem> items = ExposureTrail.OfTool(custody, receipts, KitsOf(tool, kit, receipts, since, asOf), since, asOf);
        IEnumerable<ToolReceipt> disputed = Disputed.Where(receipt => receipt.Tool == tool && receipt.At <= asOf && !(receipt.At < since));
        return new Exposure(asOf, since, [.. ExposureTrail.InOrder(items.Concat(disputed.SelectMany(receipt => ExposureTrail.OfDisputed(custody, receipt, asOf))))]);
    }

    /// <summary>Every kit that the tool can have been with: a manifest that moves it to another kit moves no tool, and tells nothing of where it was before.</summary>
    private HashSet<KitId> KitsOf(ToolId tool, KitId? kit, IReadOnlyList<(ToolReceipt Receipt, ReceiptClosure? Closure)> receipts, DateTimeOffset? since, DateTimeOffset asOf)
    {
        HashSet<KitId> kits =
        [
            .. custody.KitsListing(tool, since ?? DateTimeOffset.MinValue, asOf),
            .. receipts.Select(static one => one.Closure).OfType<ReceiptClosure>().Where(closure => !closure.ToKit.IsEmpty && !(closure.At < since)).Select(static closure => closure.ToKit),
        ];
        foreach (KitId? one in (ReadOnlySpan<KitId?>)[kit, KitOfLast(tool, asOf)])
        {
            if (one is { } id)
            {
                kits.Add(id);
            }
        }

        return kits;
    }

    private DateTimeOffset? LastOf(IEnumerable<PositiveAccounting> accountings, DateTimeOffset asOf) => accountings
        .Where(one => one.At <= asOf && (!sightingNeeded || one.Basis == AccountingBasis.Sighted))
        .Max(static one => (DateTimeOffset?)one.At);

    private KitId? KitOfLast(ToolId tool, DateTimeOffset asOf) => byTool[tool].Where(one => one.At <= asOf).MaxBy(static one => one.At)?.Kit;

    private ToolId? ToolOf(KitId kit, string label, DateTimeOffset asOf) =>
        (custody.ManifestOf(kit, asOf)?.Lines ?? []).FirstOrDefault(line => string.Equals(Label(line), label, StringComparison.Ordinal))?.Tool?.Id
        ?? byLine[(kit, label)].Where(one => one.At <= asOf && !one.Tool.IsEmpty).MaxBy(static one => one.At)?.Tool;

    private static string Label(ManifestLine line) => line.Number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
