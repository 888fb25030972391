using System;
using System.Collections.Generic;
using System.IO;
using PitReaderLog;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Samples.Tests.PitReaderLog;

/// <summary>The two logs under data, and the closeouts the tests ask of them.</summary>
internal static class Logs
{
    public static readonly TagId Marker3 = TagId.FromText("0000_000000004978");
    public static readonly TagId Marker1 = TagId.FromText("0000_000000005189");
    public static readonly TagId Second1 = TagId.FromText("0000_000000005972");

    /// <summary>A tag that never occurs in any log.</summary>
    public static readonly TagId Never = TagId.FromText("0000_000000000001");

    public static (IReadOnlyList<TagRead> Reads, IReadOnlyList<RefusedRow> Refused) Read(string name)
    {
        var refused = new List<RefusedRow>();
        using StreamReader log = File.OpenText(Path.Combine(Repository.Root, "tests", "ToolLedger.Samples.Tests", "data", "pit-reader-logs", name));
        return ([.. LogReader.Reads(log, TimeSpan.Zero, refused)], refused);
    }

    /// <summary>reader_3: the marker fires once a minute, the kit's tag never occurs.</summary>
    public static LogCloseout OfReader3(PresencePolicy? presence = null) => new(Read("reader_3.txt").Reads, Marker3, Never, TimeSpan.FromMinutes(1), TimeSpan.Zero, presence);

    /// <summary>reader_1: one marker is the control tag, every 3 s at first and every 179.3 s later; the other is the kit.</summary>
    public static LogCloseout OfReader1() => new(Read("reader_1.txt").Reads, Marker1, Second1, TimeSpan.FromSeconds(180), TimeSpan.Zero);
}
