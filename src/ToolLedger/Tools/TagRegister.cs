using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Diagnostics.CodeAnalysis;
using System.Threading;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <summary>All bindings of tags to tools with their history: which tool a tag was on at any instant.</summary>
/// <remarks>
/// A tag is on one tool at a time; a tool may carry several tags. A binding that starts later never changes an earlier
/// instant. Immutable and thread-safe; compared by reference, or by <see cref="Digest"/>.
/// </remarks>
public sealed partial class TagRegister
{
    /// <summary>Most bindings of one register.</summary>
    public const int MaxBindingCount = 2_000_000;

    private readonly TagBinding[] _bindings;
    private readonly GroupIndex<TagId> _byTag;
    private readonly Lazy<GroupIndex<ToolId>> _byTool;
    private readonly Lazy<GroupIndex<string>> _byIdentity;
    private readonly Dictionary<TagId, List<BindingQuarantine>> _quarantines;
    private readonly Lazy<Digest> _digest;

    /// <summary>Makes a register.</summary>
    /// <param name="bindings">The bindings in any order, at most 2,000,000.</param>
    /// <exception cref="ArgumentNullException">The list or a binding is null.</exception>
    /// <exception cref="RecordException">A tag is on two tools at one instant, bound twice to one tool, or a binding ends before it starts.</exception>
    public TagRegister(IEnumerable<TagBinding> bindings)
        : this(Accept(bindings, []))
    {
    }

    /// <summary>Makes a register with the bindings that people doubt.</summary>
    /// <param name="bindings">The bindings in any order, at most 2,000,000.</param>
    /// <param name="quarantines">The quarantines in any order, past and standing, at most 200,000.</param>
    /// <exception cref="ArgumentNullException">A list or an entry is null.</exception>
    /// <exception cref="RecordException">A tag is on two tools at one instant, bound twice to one tool, a binding ends before it starts, or a quarantine concerns
    /// no binding or is not cleared in full.</exception>
    public TagRegister(IEnumerable<TagBinding> bindings, IEnumerable<BindingQuarantine> quarantines)
        : this(Accept(bindings, quarantines))
    {
    }

    private TagRegister((TagBinding[] Bindings, BindingQuarantine[] Quarantines) checkedContent)
    {
        TagBinding[] ordered = checkedContent.Bindings;
        _bindings = ordered;
        _quarantines = ByTag(checkedContent.Quarantines);
        Quarantines = Array.AsReadOnly(checkedContent.Quarantines);
        _byTag = GroupIndex<TagId>.Of(ordered, binding => binding.Tag, CompareStarts);
        _byTool = new(() => GroupIndex<ToolId>.Of(_bindings, binding => binding.Tool, CompareStarts), LazyThreadSafetyMode.ExecutionAndPublication);
        _byIdentity = new(IndexIdentities, LazyThreadSafetyMode.ExecutionAndPublication);
        _digest = new(() => CanonicalJson.DigestOf(ToJson()), LazyThreadSafetyMode.ExecutionAndPublication);
        Bindings = Array.AsReadOnly(_bindings);
    }

    /// <summary>A register without bindings.</summary>
    public static TagRegister Empty { get; } = new(([], []));

    /// <summary>The bindings, ordered by tag and start.</summary>
    public IReadOnlyList<TagBinding> Bindings { get; }

    /// <summary>Number of bindings.</summary>
    public int Count => _bindings.Length;

    /// <summary>SHA-256 of the canonical form (RFC 8785) of <see cref="ToJson"/>; computed once, when first asked for.</summary>
    public Digest Digest => _digest.Value;

    /// <summary>Makes a register if nothing speaks against it.</summary>
    /// <param name="bindings">The bindings in any order, at most 2,000,000.</param>
    /// <param name="register">The register, or null.</param>
    /// <param name="issues">Every issue; empty when the register was made. The place counts bindings in the order given.</param>
    /// <returns>False if there are issues.</returns>
    /// <exception cref="ArgumentNullException">The list or a binding is null.</exception>
    public static bool TryCreate(IEnumerable<TagBinding> bindings, [NotNullWhen(true)] out TagRegister? register, out IReadOnlyList<RecordIssue> issues) =>
        TryCreate(bindings, [], out register, out issues);

    /// <summary>Makes a register with the bindings that people doubt, if nothing speaks against it.</summary>
    /// <param name="bindings">The bindings in any order, at most 2,000,000.</param>
    /// <param name="quarantines">The quarantines in any order, past and standing, at most 200,000.</param>
    /// <param name="register">The register, or null.</param>
    /// <param name="issues">Every issue; empty when the register was made. The place counts entries in the order given.</param>
    /// <returns>False if there are issues.</returns>
    /// <exception cref="ArgumentNullException">A list or an entry is null.</exception>
    public static bool TryCreate(
        IEnumerable<TagBinding> bindings, IEnumerable<BindingQuarantine> quarantines, [NotNullWhen(true)] out TagRegister? register, out IReadOnlyList<RecordIssue> issues)
    {
        var found = new IssueList();
        TagBinding[]? accepted = Check(bindings, found);
        List<BindingQuarantine>? given = Take(quarantines, found);
        BindingQuarantine[]? doubted = accepted is null || given is null ? null : CheckQuarantines(accepted, given, static index => index, found);
        register = accepted is null || doubted is null ? null : new TagRegister((accepted, doubted));
        issues = found;
        return register is not null;
    }

    /// <summary>Which binding of the tag is in force then?</summary>
    /// <param name="tag">The tag as it answered.</param>
    /// <param name="at">The instant.</param>
    /// <returns>The binding, or null.</returns>
    public TagBinding? FindLive(TagId tag, DateTimeOffset at)
    {
        // The history is ordered by start and free of overlaps: the last one started by then is the only candidate.
        ReadOnlySpan<int> history = _byTag.Of(tag);
        int low = 0;
        int high = history.Length;
        while (low < high)
        {
            int middle = (low + high) >>> 1;
            if (_bindings[history[middle]].From <= at)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return low > 0 && _bindings[history[low - 1]] is { } binding && binding.IsLiveAt(at) ? binding : null;
    }

    /// <summary>All bindings of a tag, ordered by start.</summary>
    /// <param name="tag">The tag as it answered.</param>
    /// <returns>The bindings; none if the tag was never bound.</returns>
    public IReadOnlyList<TagBinding> HistoryOf(TagId tag) => Resolve(_byTag.Of(tag));

    /// <summary>All bindings of a tool, ordered by start.</summary>
    /// <param name="tool">The tool.</param>
    /// <returns>The bindings; none if the tool never carried a tag.</returns>
    public IReadOnlyList<TagBinding> HistoryOf(ToolId tool) => Resolve(_byTool.Value.Of(tool));

    /// <summary>The binding of a tool that never had another one; null for any other tool.</summary>
    internal TagBinding? OnlyBindingOf(ToolId tool) => _byTool.Value.Of(tool) is [int index] ? _bindings[index] : null;

    /// <summary>The bindings of a tool in force then, ordered by start.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="at">The instant.</param>
    /// <returns>The bindings; none if the tool carries no tag then.</returns>
    public IReadOnlyList<TagBinding> LiveTagsOf(ToolId tool, DateTimeOffset at)
    {
        List<TagBinding>? live = null;
        foreach (int index in _byTool.Value.Of(tool))
        {
            if (_bindings[index].IsLiveAt(at))
            {
                (live ??= []).Add(_bindings[index]);
            }
        }

        return live is null ? [] : live.AsReadOnly();
    }

    /// <summary>How many bindings it holds.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => FormattableString.Invariant($"{Count} {(Count == 1 ? "binding" : "bindings")} of tags");

    private static int CompareStarts(TagBinding left, TagBinding right) => left.From.CompareTo(right.From);

    private ReadOnlyCollection<TagBinding> Resolve(ReadOnlySpan<int> indexes)
    {
        if (indexes.IsEmpty)
        {
            return ReadOnlyCollection<TagBinding>.Empty;
        }

        var resolved = new TagBinding[indexes.Length];
        for (int i = 0; i < resolved.Length; i++)
        {
            resolved[i] = _bindings[indexes[i]];
        }

        return Array.AsReadOnly(resolved);
    }

    private static (TagBinding[] Bindings, BindingQuarantine[] Quarantines) Accept(IEnumerable<TagBinding> bindings, IEnumerable<BindingQuarantine> quarantines) =>
        TryCreate(bindings, quarantines, out TagRegister? register, out IReadOnlyList<RecordIssue> issues)
            ? (register._bindings, [.. register.Quarantines])
            : throw new RecordException(issues);
}
