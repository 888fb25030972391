using System;
using System.Buffers;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Globalization;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Kits;

/// <content>What a register refuses, and what it derives once.</content>
public sealed partial class KitRegister
{
    private static KitManifest[] Accept(IEnumerable<KitManifest> manifests)
    {
        var issues = new IssueList();
        return Check(manifests, issues) ?? throw new RecordException(issues);
    }

    private static KitManifest[]? Check(IEnumerable<KitManifest> manifests, IssueList issues)
    {
        ArgumentNullException.ThrowIfNull(manifests);
        var kept = new List<KitManifest>();
        var places = new List<int>();
        var seen = new Dictionary<(KitId Kit, int Revision), int>();
        int index = 0;
        foreach (KitManifest manifest in manifests)
        {
            ArgumentNullException.ThrowIfNull(manifest, nameof(manifests));
            if (index == MaxManifestCount)
            {
                issues.Report("$", new Reason(KitRules.TooManyManifests, ("limit", MaxManifestCount.ToString("N0", CultureInfo.InvariantCulture))));
                return null;
            }

            if (seen.TryAdd((manifest.Id, manifest.Revision), kept.Count))
            {
                kept.Add(manifest);
                places.Add(index);
            }
            else if (kept[seen[(manifest.Id, manifest.Revision)]].Digest != manifest.Digest)
            {
                issues.Report(string.Create(CultureInfo.InvariantCulture, $"$[{index}]"), new Reason(KitRules.RevisionEdited,
                    ("revision", manifest.Revision.ToString(CultureInfo.InvariantCulture)), ("kit", manifest.Id.Value)));
            }

            index++;
        }

        new SubKitCheck(kept, places, seen, issues).Run();
        return issues.Reported > 0 ? null : InOrder(kept);
    }

    private static KitManifest[] InOrder(List<KitManifest> manifests)
    {
        KitManifest[] ordered = manifests.ToArray();
        Array.Sort(ordered, static (left, right) =>
        {
            int order = string.CompareOrdinal(left.Id.Value, right.Id.Value);
            return order != 0 ? order : left.Revision.CompareTo(right.Revision);
        });
        return ordered;
    }

    /// <summary>When each manifest stops being in force: as soon as any higher revision is.</summary>
    private static DateTimeOffset[] EndsOf(KitManifest[] manifests, GroupIndex<KitId> byKit)
    {
        var ends = new DateTimeOffset[manifests.Length];
        for (int group = 0; group < byKit.GroupCount; group++)
        {
            DateTimeOffset end = DateTimeOffset.MaxValue;
            ReadOnlySpan<int> revisions = byKit.Group(group);
            for (int i = revisions.Length - 1; i >= 0; i--)
            {
                ends[revisions[i]] = end;
                DateTimeOffset from = manifests[revisions[i]].EffectiveFrom;
                end = from < end ? from : end;
            }
        }

        return ends;
    }

    private static ReadOnlyCollection<KitId> IdsOf(KitManifest[] manifests)
    {
        var ids = new List<KitId>();
        foreach (KitManifest manifest in manifests)
        {
            if (ids.Count == 0 || ids[^1] != manifest.Id)
            {
                ids.Add(manifest.Id);
            }
        }

        return ids.AsReadOnly();
    }

    private Digest ComputeDigest()
    {
        var buffer = new ArrayBufferWriter<byte>(128 * (_manifests.Length + 1));
        using (var writer = new Utf8JsonWriter(buffer))
        {
            writer.WriteStartObject();
            writer.WriteStartArray("manifests");
            foreach (KitManifest manifest in _manifests)
            {
                writer.WriteStartObject();
                writer.WriteString("digest", manifest.Digest.ToString());
                writer.WriteString("kit", manifest.Id.Value);
                writer.WriteNumber("revision", manifest.Revision);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteString("schema", "toolledger/kit-register/1");
            writer.WriteEndObject();
        }

        return CanonicalJson.DigestOf(buffer.WrittenSpan);
    }
}
