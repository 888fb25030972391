using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Records;

namespace ToolLedger.Kits;

/// <content>What a manifest that is about to be signed may not do with sub-kits.</content>
public sealed partial class KitRegister
{
    /// <summary>Sub-kits of a new manifest that are not at hand when it takes effect, and those that hold its own kit.</summary>
    private void FindNesting(KitManifest manifest, IssueList issues)
    {
        for (int i = 0; i < manifest.Lines.Count; i++)
        {
            if (manifest.Lines[i] is not SubKitLine line)
            {
                continue;
            }

            string place = string.Create(CultureInfo.InvariantCulture, $"$.lines[{i}]");
            KitManifest? listed = Find(line);
            if (PathTo(manifest, line) is { } path)
            {
                issues.Report(place, new Reason(KitRules.SubKitCycle, ("revision", Text(manifest.Revision)), ("kit", manifest.Id.Value), ("path", path)), line.Number);
            }
            else if (listed is null || Find(line.Kit, manifest.EffectiveFrom) != listed)
            {
                issues.Report(place, new Reason(listed is null ? KitRules.SubKitUnresolved : KitRules.SubKitNotInForce, ("revision", Text(manifest.Revision)), ("kit", manifest.Id.Value),
                    ("subRevision", Text(line.Revision)), ("subKit", line.Kit.Value)), line.Number);
            }
        }
    }

    /// <summary>The way from a sub-kit line back to the kit that lists it, innermost first, by the listed revisions and by all that are in force from then on; null if there is none. Every kit is looked at once.</summary>
    private string? PathTo(KitManifest manifest, SubKitLine line)
    {
        var holderOf = new Dictionary<KitId, KitId> { [line.Kit] = manifest.Id };
        var open = new Queue<SubKitLine>([line]);
        var seen = new HashSet<(KitId Kit, int Revision)>();
        while (open.TryDequeue(out SubKitLine? next))
        {
            foreach (int index in _byKit.Of(next.Kit))
            {
                KitManifest inner = _manifests[index];
                bool counts = inner.Revision == next.Revision || IsInForceFrom(index, manifest.EffectiveFrom);
                if (!counts || !inner.HasSubKits || !seen.Add((inner.Id, inner.Revision)))
                {
                    continue;
                }

                foreach (SubKitLine below in inner.Lines.OfType<SubKitLine>())
                {
                    if (below.Kit == manifest.Id)
                    {
                        return PathText(manifest.Id, inner.Id, holderOf);
                    }

                    holderOf.TryAdd(below.Kit, inner.Id);
                    open.Enqueue(below);
                }
            }
        }

        return null;
    }

    private static string PathText(KitId kit, KitId holder, Dictionary<KitId, KitId> holderOf)
    {
        List<KitId> path = [kit];
        for (KitId step = holder; step != kit; step = holderOf[step])
        {
            path.Add(step);
        }

        return string.Join(" in ", path.Append(kit).Select(static step => step.Value));
    }
}
