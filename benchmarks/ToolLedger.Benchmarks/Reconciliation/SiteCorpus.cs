using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Benchmarks.Reads;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Benchmarks.Reconciliation;

/// <summary>The site behind <see cref="ReadCorpus"/>: its kits, its tag bindings, and a presentation of all of them, with a control tag on each of four antennas.</summary>
internal static class SiteCorpus
{
    public static readonly TimeSpan Window = TimeSpan.FromSeconds(600);

    private static readonly TagId ControlTag = ReadCorpus.Tag(ReadCorpus.TagCount);

    public static KitId KitOf(int kit) => new(string.Create(CultureInfo.InvariantCulture, $"K{kit}"));

    public static KitRegister Kits()
    {
        DateTimeOffset since = ReadCorpus.Start.AddDays(-1);
        var signature = new Signature { By = new PersonId("P-1"), At = since };
        var manifests = new List<KitManifest>(ReadCorpus.KitCount);
        for (int kit = 0; kit < ReadCorpus.KitCount; kit++)
        {
            var lines = new List<ManifestLine>(ReadCorpus.TagsPerKit);
            for (int i = 0; i < ReadCorpus.TagsPerKit; i++)
            {
                lines.Add(new ToolLine { Number = i + 1, Tool = new Tool { Id = ToolOf((kit * ReadCorpus.TagsPerKit) + i), Description = "Tool" } });
            }

            manifests.Add(new KitManifest(KitOf(kit), 1, "Kit", since, signature, lines));
        }

        return new KitRegister(manifests);
    }

    public static TagRegister Tags() => new(Enumerable.Range(0, ReadCorpus.TagCount)
        .Select(i => new TagBinding { Tag = ReadCorpus.Tag(i), Tool = ToolOf(i), From = ReadCorpus.Start.AddDays(-1) }));

    public static Presentation Presentation() => Presentation(ReadCorpus.Start + Window);

    public static Presentation Presentation(DateTimeOffset until) => new()
    {
        Id = new SessionId("S-1"),
        Station = new ReadStation
        {
            Id = new StationId("R-1"),
            Antennas = [.. Enumerable.Range(1, 4).Select(port => new AntennaPort((byte)port))],
            ControlTags = [new ControlTag(ControlTag)],
        },
        Kits = [.. Enumerable.Range(0, ReadCorpus.KitCount).Select(KitOf)],
        From = ReadCorpus.Start,
        Until = until,
        ReaderClockOffset = TimeSpan.Zero,
        ReaderClockOffsetAfter = TimeSpan.Zero,
    };

    /// <summary>The clustered reads, with one read of the control tag on each antenna near both ends of the window.</summary>
    public static TagRead[] Reads(int count) =>
        [.. ControlReads(TimeSpan.FromSeconds(1)), .. ReadCorpus.Make(count, isClustered: true), .. ControlReads(Window - TimeSpan.FromSeconds(1))];

    /// <summary>One read of the control tag on each antenna near both ends of a longer window.</summary>
    public static TagRead[] ControlReads(DateTimeOffset to) =>
        [.. ControlReads(TimeSpan.FromSeconds(1)), .. ControlReads(to - ReadCorpus.Start - TimeSpan.FromSeconds(1))];

    private static IEnumerable<TagRead> ControlReads(TimeSpan at) => Enumerable.Range(1, 4)
        .Select(port => new TagRead(ControlTag, new AntennaPort((byte)port), ReadCorpus.Start + at) { Strength = new Rssi(-5_000) });

    public static ToolId ToolOf(int i) => new(string.Create(CultureInfo.InvariantCulture, $"T{i}"));
}
