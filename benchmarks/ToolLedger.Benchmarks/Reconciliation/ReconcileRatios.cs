using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Benchmarks.Reads;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Benchmarks.Reconciliation;

/// <summary>One kit of twenty tools from a closed session, and the bare comparison of tags heard with the tags of a kit, beside a hash set for each kit.</summary>
internal static class ReconcileRatios
{
    private const int KitCount = 2_000;

    internal static int Run()
    {
        Bare();
        foreach (int silent in new[] { 0, 2 })
        {
            ReconciliationInput input = OneKit(silent);
            Measure($"one kit of 20 lines, {silent} of them silent", new Reconciler(new ReconciliationPolicy()), input);
            var stated = new ReconciliationPolicy { Presence = new StatedRiskPolicy() };
            Measure($"the same at a stated risk, {silent} silent", new Reconciler(stated), input);
            Measure($"the same with a rule of the host, {silent} silent", new Reconciler(stated, [new NeverObjects()]), input);
        }

        return 0;
    }

    private static void Measure(string what, Reconciler reconciler, ReconciliationInput input) => Ratios.Measure(
        what,
        100,
        20,
        41,
        ("result", () => Repeat(() => (long)reconciler.Reconcile(input).Kit.State)),
        ("result and all reasons", () => Repeat(() => ReasonsOf(reconciler.Reconcile(input)))),
        ("result, reasons, findings", () => Repeat(() => AllOf(reconciler.Reconcile(input)))));

    private static long Repeat(Func<long> work)
    {
        long sum = 0;
        for (int i = 0; i < 100; i++)
        {
            sum += work();
        }

        return sum;
    }

    private static long ReasonsOf(ReconciliationResult result) => result.Lines.Sum(static line => line.Reasons.Count) + result.Kit.Reasons.Count;

    private static long AllOf(ReconciliationResult result) => ReasonsOf(result) + result.Findings.Count;

    // 2 % of the tags of each kit are silent and 1 % are another kit's, as in the data of the other benchmarks.
    private static void Bare()
    {
        var random = new SplitMix64(11);
        TagSet[] sets = new TagSet[KitCount];
        var kits = new TagId[KitCount][];
        var heard = new TagId[KitCount][];
        for (int kit = 0; kit < KitCount; kit++)
        {
            kits[kit] = [.. Enumerable.Range(kit * ReadCorpus.TagsPerKit, ReadCorpus.TagsPerKit).Select(ReadCorpus.Tag)];
            sets[kit] = new TagSet(kits[kit]);
            heard[kit] = [.. kits[kit]
                .Where(_ => random.Below(50) != 0)
                .Select(tag => random.Below(100) == 0 ? ReadCorpus.Tag(random.Below(ReadCorpus.TagCount)) : tag)];
        }

        var wasHeard = new bool[ReadCorpus.TagsPerKit];
        Ratios.Measure(
            "tags heard against the tags of a kit",
            KitCount,
            ("hash set for each kit", () => Hashed(kits, heard)),
            ("tag set", () => Compared(sets, heard, wasHeard)));
    }

    private static long Hashed(TagId[][] kits, TagId[][] heard)
    {
        long sum = 0;
        for (int kit = 0; kit < kits.Length; kit++)
        {
            var set = new HashSet<TagId>(kits[kit]);
            int before = set.Count;
            int others = 0;
            foreach (TagId tag in heard[kit])
            {
                others += set.Remove(tag) ? 0 : 1;
            }

            sum += before - set.Count + others;
        }

        return sum;
    }

    private static long Compared(TagSet[] sets, TagId[][] heard, bool[] wasHeard)
    {
        long sum = 0;
        for (int kit = 0; kit < sets.Length; kit++)
        {
            sum += sets[kit].Compare(heard[kit], wasHeard, out int others) + others;
        }

        return sum;
    }

    private static ReconciliationInput OneKit(int silent)
    {
        DateTimeOffset since = ReadCorpus.Start.AddDays(-1);
        var signature = new Signature { By = new PersonId("P-1"), At = since };
        IEnumerable<int> numbers = Enumerable.Range(0, ReadCorpus.TagsPerKit);
        var manifest = new KitManifest(SiteCorpus.KitOf(0), 1, "Kit", since, signature, numbers.Select(static i => (ManifestLine)new ToolLine
        {
            Number = i + 1,
            Tool = new Tool { Id = SiteCorpus.ToolOf(i), Description = "Tool" },
        }));
        TagId control = ReadCorpus.Tag(ReadCorpus.TagCount);
        var station = new ReadStation
        {
            Id = new StationId("R-1"),
            Antennas = [new AntennaPort(1), new AntennaPort(2)],
            ControlTags = [new ControlTag(control)],
        };
        DateTimeOffset from = ReadCorpus.Start;
        DateTimeOffset to = from.AddSeconds(60);
        var builder = new ReadSessionBuilder(
            new Presentation { Id = new SessionId("S-1"), Station = station, Kits = [manifest.Id], From = from, ReaderClockOffset = TimeSpan.Zero }, new SessionPolicy());
        for (int i = 0; i < 12_000; i++)
        {
            var antenna = new AntennaPort((byte)(1 + (i & 1)));
            builder.Add(new TagRead(i % 50 < 2 ? control : ReadCorpus.Tag((i / 2) % (ReadCorpus.TagsPerKit - silent)), antenna, from.AddMilliseconds(5 * i)));
        }

        return new ReconciliationInput
        {
            Kits = new KitRegister([manifest]),
            Subject = manifest.Id,
            Sessions = [builder.Close(to, TimeSpan.Zero)],
            Tags = new TagRegister(numbers.Select(i => new TagBinding { Tag = ReadCorpus.Tag(i), Tool = SiteCorpus.ToolOf(i), From = since })),
            AsOf = to,
        };
    }
}
