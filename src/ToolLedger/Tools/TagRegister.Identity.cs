using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Tools;

/// <content>What tags say when they are decoded.</content>
public sealed partial class TagRegister
{
    /// <summary>Which tool has a live tag that says the same identity in other words?</summary>
    /// <remarks>
    /// A tag written anew (other filter value, other scheme of the same identity) answers with words that match no binding,
    /// while its decoded pure identity (GS1 EPC Tag Data Standard 2.3, section 6) is that of a live tool.
    /// </remarks>
    /// <param name="tag">The tag as it answered.</param>
    /// <param name="at">The instant.</param>
    /// <returns>The tool, the first in order of the starts of the bindings where several have it; null if the tag is no EPC, does not decode, is itself
    /// bound then, or no live tag has the identity.</returns>
    public ToolId? ToolByDecodedIdentity(TagId tag, DateTimeOffset at)
    {
        IReadOnlyList<ToolId> tools = ToolsByDecodedIdentity(tag, at);
        return tools.Count > 0 ? tools[0] : null;
    }

    /// <summary>Finds live tags of different tools that decode to one pure identity, for example two EPCs that differ in the filter value only.</summary>
    /// <remarks>
    /// Such bindings are legal, since a tag is known by its words; but whoever writes one of the tags anew may make it the other, and a re-encoded
    /// tag can then belong to either tool. To be asked when tags are registered. Decodes every EPC once: the first call takes time.
    /// </remarks>
    /// <returns>One issue for each binding that shares its identity with an earlier one of another tool at the same time, at most 10,001; the place counts
    /// <see cref="Bindings"/>.</returns>
    public IReadOnlyList<RecordIssue> FindSharedIdentities()
    {
        var issues = new IssueList();
        foreach (string identity in _byIdentity.Value.Keys.Where(static key => key.Length > 0).Order(StringComparer.Ordinal))
        {
            ReportShared(identity, _byIdentity.Value.Of(identity), issues);
        }

        return issues;
    }

    /// <summary>Every tool with a live tag that says the same identity in other words: a tag written anew may have been any of theirs.</summary>
    /// <param name="tag">The tag as it answered.</param>
    /// <param name="at">The instant.</param>
    /// <returns>The tools in order of the starts of the bindings; none where <see cref="ToolByDecodedIdentity"/> gives null.</returns>
    public IReadOnlyList<ToolId> ToolsByDecodedIdentity(TagId tag, DateTimeOffset at)
    {
        List<ToolId> tools = [];
        if (IdentityOf(tag) is not { } identity || FindLive(tag, at) is not null)
        {
            return tools;
        }

        foreach (int index in _byIdentity.Value.Of(identity))
        {
            if (_bindings[index].IsLiveAt(at) && !tools.Contains(_bindings[index].Tool))
            {
                tools.Add(_bindings[index].Tool);
            }
        }

        return tools;
    }

    // Two bindings that reach furthest, of two tools, are enough to find an overlap with any later one: one sweep, no pairs.
    private void ReportShared(string identity, ReadOnlySpan<int> group, IssueList issues)
    {
        TagBinding? furthest = null, second = null;
        foreach (int index in group)
        {
            TagBinding binding = _bindings[index];
            TagBinding? other = furthest is not null && furthest.Tool != binding.Tool && furthest.IsLiveAt(binding.From) ? furthest
                : second is not null && second.Tool != binding.Tool && second.IsLiveAt(binding.From) ? second : null;
            if (other is not null && other.Tag != binding.Tag)
            {
                issues.Report(PlaceOf(index), new Reason(TagRules.SameIdentityOnTwoTools,
                    ("tag", binding.Tag.ToString()), ("tool", binding.Tool.Value), ("otherTag", other.Tag.ToString()), ("otherTool", other.Tool.Value),
                    ("identity", identity)));
            }

            if (furthest is null || EndOf(binding) > EndOf(furthest))
            {
                (furthest, second) = (binding, furthest is not null && furthest.Tool != binding.Tool ? furthest : second);
            }
            else if (furthest.Tool != binding.Tool && (second is null || EndOf(binding) > EndOf(second)))
            {
                second = binding;
            }
        }
    }

    private static DateTimeOffset EndOf(TagBinding binding) => binding.Until ?? DateTimeOffset.MaxValue;

    private static string? IdentityOf(TagId tag)
    {
        if (tag.Kind != TagIdKind.Epc || tag.IsEmpty)
        {
            return null;
        }

        // A raw URI only repeats the words, so it identifies nothing beyond them.
        string identity = tag.Epc.ToPureIdentityUri();
        return identity.StartsWith("urn:epc:id:", StringComparison.Ordinal) ? identity : null;
    }

    private GroupIndex<string> IndexIdentities() =>
        GroupIndex<string>.Of(_bindings, binding => IdentityOf(binding.Tag) ?? "", CompareStarts);
}
