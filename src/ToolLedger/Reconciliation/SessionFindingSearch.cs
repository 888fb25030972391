using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Findings about a session: tools of kits that were not presented, kits passing by, retired tags.</summary>
internal static class SessionFindingSearch
{
    public static List<Finding> Search(ReconciliationScope scope, ReadSession session)
    {
        var findings = new List<Finding>();
        SortedDictionary<string, List<TagReading>>? byKit = null;
        foreach (TagReading reading in scope.ReadingOf(session).Tags)
        {
            if (reading is { Kind: TagReadingKind.Retired, Tool: { } retired })
            {
                findings.Add(new Finding(
                    FindingLevel.Session,
                    new Reason(ReconciliationReasons.RetiredTag, ("tag", reading.Evidence.Tag.ToString()), ("tool", retired.Value)))
                {
                    Session = session.Id,
                    Tags = [reading.Evidence.Tag],
                });
            }
            else if (reading is { Kind: TagReadingKind.Live, Kit: { } kit } && !session.Presents(kit)
                && !scope.HoldersOf(kit).Any(session.Presents))
            {
                byKit ??= new SortedDictionary<string, List<TagReading>>(StringComparer.Ordinal);
                if (!byKit.TryGetValue(kit.Value, out List<TagReading>? list))
                {
                    byKit.Add(kit.Value, list = []);
                }

                list.Add(reading);
            }
        }

        foreach ((string kit, List<TagReading> readings) in byKit ?? [])
        {
            findings.Add(new Finding(FindingLevel.Session, Describe(scope, session, new KitId(kit), readings))
            {
                Session = session.Id,
                Tags = [.. readings.Select(static reading => reading.Evidence.Tag)],
            });
        }

        NearMissSearch.Search(scope, session, findings);
        if (session.NearbyKits.Count > 0)
        {
            SearchNeighbours(session, findings);
        }

        return findings;
    }

    private static void SearchNeighbours(ReadSession session, List<Finding> findings)
    {
        foreach (KitId kit in session.NearbyKits.Select(static nearby => nearby.Kit).Distinct())
        {
            bool always = session.Passes.All(pass => session.NearbyKits.Any(nearby => nearby.Kit == kit && nearby.Overlaps(pass.From, pass.To)));
            if (always)
            {
                findings.Add(new Finding(FindingLevel.Session, new Reason(ReconciliationReasons.NeighbourNearby, ("kit", kit.Value))) { Session = session.Id });
            }
        }
    }

    private static Reason Describe(ReconciliationScope scope, ReadSession session, KitId kit, List<TagReading> readings)
    {
        FindingPolicy policy = scope.Policy.Findings;
        DateTimeOffset first = readings.Min(static reading => reading.Evidence.FirstSeen)!.Value;
        DateTimeOffset last = readings.Max(static reading => reading.Evidence.LastSeen)!.Value;
        string count = readings.Count.ToString(CultureInfo.InvariantCulture);
        if (readings.Count >= policy.PassingTagsNeeded
            && readings.Count * 2 >= LiveTagsOf(scope, kit, session.To)
            && last - first <= policy.PassingSpanMax)
        {
            string seconds = (last - first).TotalSeconds.ToString("0.###", CultureInfo.InvariantCulture);
            return new Reason(ReconciliationReasons.KitPassing, ("tags", count), ("kit", kit.Value), ("seconds", seconds));
        }

        const int Named = 10;
        KitManifest? manifest = scope.Input.Kits.Find(kit, scope.AsOf);
        string tools = string.Join(", ", readings.Take(Named).Select(reading => NameOf(manifest, reading.Tool!.Value)))
            + (readings.Count > Named ? ", and " + (readings.Count - Named).ToString(CultureInfo.InvariantCulture) + " more" : "");
        return new Reason(ReconciliationReasons.ForeignTools, ("tags", count), ("kit", kit.Value), ("tools", tools), ("signer", SignerOf(manifest)));
    }

    /// <summary>What a person looks for: the tool's description and mark, else its id.</summary>
    private static string NameOf(KitManifest? manifest, ToolId id) => manifest?.FindLine(id)?.Tool is not { } tool ? id.Value
        : tool.Mark is { } mark ? $"{tool.Description} [{mark}]"
        : $"{tool.Description}, {id.Value}";

    private static string SignerOf(KitManifest? manifest) => manifest is null ? "nobody known"
        : manifest.SignedBy.Role.IsEmpty ? manifest.SignedBy.By.Value
        : $"{manifest.SignedBy.By.Value} ({manifest.SignedBy.Role.Value})";

    private static int LiveTagsOf(ReconciliationScope scope, KitId kit, DateTimeOffset at)
    {
        int count = 0;
        foreach (ManifestLine line in scope.Input.Kits.Find(kit, scope.AsOf)?.Lines ?? [])
        {
            count += line.Tool is { } tool ? scope.Input.Tags.LiveTagsOf(tool.Id, at).Count : 0;
        }

        return count;
    }
}
