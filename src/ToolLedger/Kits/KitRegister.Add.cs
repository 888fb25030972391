using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Kits;

/// <content>The door for a manifest that is about to be signed.</content>
public sealed partial class KitRegister
{
    /// <summary>Adds a manifest that is about to be signed, unless it contradicts the lists that are there.</summary>
    /// <remarks>
    /// A register made of lists that exist already shows in <see cref="Faults"/> what is wrong with them, since a kit that is out stays out. A new list need not bring such a fault along, so here it is
    /// refused: a tool or sub-kit on the list of another kit at any instant from the effective time on, a mark that another kit uses for another tool then, the mark of a tool that was not found, a
    /// revision that is not higher than the latest one of the kit or that changes one already there, a sub-kit whose listed revision is not in the register or not in force when the list takes effect, and a
    /// kit that would lie inside itself, over listed revisions or over those in force at any instant from then on. To move a tool, first add the revision that drops it; to add kits with sub-kits, add the
    /// innermost first. One fault cannot be refused here: a new revision of a sub-kit makes the lists that hold the former one stale, until they are revised too, and <see cref="Faults"/> of the new register says so.
    /// </remarks>
    /// <param name="manifest">The manifest. The very one that is in the register already is accepted and changes nothing.</param>
    /// <param name="notFound">The tools that people have declared not found; those without a mark match nothing.</param>
    /// <param name="register">The register with the manifest in it, or null if it is refused.</param>
    /// <param name="issues">Every issue with its place in the manifest and its line; empty if the manifest was added.</param>
    /// <returns>Whether the manifest was added.</returns>
    /// <exception cref="ArgumentNullException">An argument, or one of the tools, is null.</exception>
    public bool TryAdd(KitManifest manifest, IEnumerable<Tool> notFound, [NotNullWhen(true)] out KitRegister? register, out IReadOnlyList<RecordIssue> issues)
    {
        ArgumentNullException.ThrowIfNull(manifest);
        ArgumentNullException.ThrowIfNull(notFound);
        ILookup<string, Tool> lost = notFound.Where(static tool => tool.Mark is not null).ToLookup(static tool => tool.Mark!, StringComparer.Ordinal);
        var found = new IssueList();
        issues = found;
        register = null;
        if (Find(manifest.Id, manifest.Revision) is { } same && same.Digest == manifest.Digest)
        {
            register = this;
            return true;
        }

        FindNesting(manifest, found);
        if (!TryCreate([.. Manifests, manifest], out KitRegister? together, out IReadOnlyList<RecordIssue> refusals))
        {
            // What is refused of them together is refused of the new one, since the others stood before it.
            foreach (RecordIssue refusal in refusals.Where(static refusal => refusal.Reason.Kind != KitRules.SubKitCycle))
            {
                found.Report(refusal.Reason.Kind == KitRules.RevisionEdited ? "$.revision" : refusal.Reason.Kind == KitRules.SubKitsTooDeep ? "$.lines" : "$", refusal.Reason);
            }

            return false;
        }

        ReadOnlySpan<int> revisions = _byKit.Of(manifest.Id);
        if (revisions.Length > 0 && _manifests[revisions[^1]].Revision > manifest.Revision)
        {
            found.Report("$.revision", new Reason(KitRules.RevisionNotLatest, ("revision", Text(manifest.Revision)), ("kit", manifest.Id.Value), ("latest", Text(_manifests[revisions[^1]].Revision))));
        }

        FindClaims(manifest, lost, found);
        register = found.Reported == 0 ? together : null;
        return register is not null;
    }

    /// <summary>What other lists, and people, say of the things on a list.</summary>
    private void FindClaims(KitManifest manifest, ILookup<string, Tool> lost, IssueList issues)
    {
        Dictionary<string, (KitManifest Manifest, Tool Tool)> marks = MarksOfOthers(manifest);
        for (int i = 0; i < manifest.Lines.Count; i++)
        {
            ManifestLine line = manifest.Lines[i];
            string place = string.Create(CultureInfo.InvariantCulture, $"$.lines[{i}]");
            if (line.Tool is { } listed && OtherWith(listed.Id, manifest) is { } other)
            {
                issues.Report(place, new Reason(KitRules.ToolInTwoKits, ("tool", listed.Id.Value), ("kit", other.Id.Value), ("otherKit", manifest.Id.Value), From(Later(other, manifest))), line.Number);
            }

            if (line is SubKitLine subKit && Listing(subKit.Kit, manifest.EffectiveFrom, DateTimeOffset.MaxValue, static _ => false).FirstOrDefault(one => one.Id != manifest.Id) is { } holder)
            {
                issues.Report(place, new Reason(KitRules.SubKitInTwoKits, ("subKit", subKit.Kit.Value), ("kit", holder.Id.Value), ("otherKit", manifest.Id.Value), From(Later(holder, manifest))), line.Number);
            }

            foreach (Tool tool in ToolsOf(line).Where(static tool => tool.Mark is not null))
            {
                if (marks.TryGetValue(tool.Mark!, out (KitManifest Manifest, Tool Tool) user) && user.Tool.Id != tool.Id)
                {
                    issues.Report(place, new Reason(KitRules.MarkInTwoKits, ("mark", tool.Mark!), ("tool", user.Tool.Id.Value), ("kit", user.Manifest.Id.Value),
                        ("otherTool", tool.Id.Value), ("otherKit", manifest.Id.Value), From(Later(user.Manifest, manifest))), line.Number);
                }

                if (lost[tool.Mark!].FirstOrDefault(one => one.Id != tool.Id) is { } gone)
                {
                    issues.Report(place, new Reason(KitRules.MarkOfToolNotFound, ("mark", tool.Mark!), ("tool", tool.Id.Value), ("gone", gone.Id.Value)), line.Number);
                }
            }
        }
    }

    private KitManifest? OtherWith(ToolId tool, KitManifest manifest) =>
        _tools.Listing(tool, manifest.EffectiveFrom, DateTimeOffset.MaxValue, static _ => false).FirstOrDefault(other => other.Id != manifest.Id);

    /// <summary>The marks on the lists of other kits that are in force at some instant from the effective time on, each with its first bearer.</summary>
    private Dictionary<string, (KitManifest Manifest, Tool Tool)> MarksOfOthers(KitManifest manifest)
    {
        var marks = new Dictionary<string, (KitManifest Manifest, Tool Tool)>(StringComparer.Ordinal);
        for (int i = 0; i < _manifests.Length; i++)
        {
            KitManifest other = _manifests[i];
            if (other.Id == manifest.Id || !IsInForceFrom(i, manifest.EffectiveFrom))
            {
                continue;
            }

            foreach (Tool tool in other.Lines.Select(static line => line.Tool).OfType<Tool>().Where(static tool => tool.Mark is not null))
            {
                marks.TryAdd(tool.Mark!, (other, tool));
            }
        }

        return marks;
    }

    /// <summary>Whether a manifest is in force at some instant from one on.</summary>
    private bool IsInForceFrom(int index, DateTimeOffset from) => _manifests[index].EffectiveFrom < _ends[index] && _ends[index] > from;

    private static KitManifest Later(KitManifest one, KitManifest other) => one.EffectiveFrom > other.EffectiveFrom ? one : other;
}
