using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Samples.Tests.RealReads;

/// <summary>From reads to a conclusion for an invented kit of one tool, in whatever order the reads are handed in.</summary>
internal sealed class WholePath(ReadStation station, TagId kitTag, SessionPolicy sessions, PresencePolicy presence)
{
    private static readonly KitId Kit = new("KIT-1");
    private static readonly ToolId Tool = new("TOOL-1");
    private static readonly DateTimeOffset Since = DateTimeOffset.UnixEpoch;

    private readonly Reconciler reconciler = new(new ReconciliationPolicy { Sessions = sessions, Presence = presence });
    private readonly TagRegister tags = new([new TagBinding { Tag = kitTag, Tool = Tool, From = Since }]);
    private readonly KitRegister kits = new([new KitManifest(
        Kit, 1, "Invented kit of one tool", Since, new Signature { By = new PersonId("P-1"), At = Since }, [new ToolLine { Number = 1, Tool = new Tool { Id = Tool, Description = "the one tool" } }])]);

    /// <summary>What is concluded if the kit was presented in a window, turned at the instants given.</summary>
    public ReconciliationResult Conclude(IEnumerable<TagRead> reads, DateTimeOffset from, DateTimeOffset to, params DateTimeOffset[] passStarts)
    {
        var builder = new ReadSessionBuilder(
            new Presentation { Id = new SessionId("S-1"), Station = station, Kits = [Kit], From = from, Until = to, PassStarts = passStarts, ReaderClockOffset = TimeSpan.Zero }, sessions);
        foreach (TagRead read in reads)
        {
            builder.Add(read);
        }

        return reconciler.Reconcile(new ReconciliationInput { Kits = kits, Subject = Kit, Sessions = [builder.Close(to, TimeSpan.Zero)], Tags = tags, AsOf = to });
    }

    /// <summary>The reads in another order, and some of them, by chance, two or three times.</summary>
    public static TagRead[] Disturbed(IReadOnlyList<TagRead> reads, int seed)
    {
        var random = new Random(seed);
        TagRead[] all = [.. reads, .. reads.Where(_ => random.Next(3) == 0), .. reads.Where(_ => random.Next(5) == 0)];
        random.Shuffle(all);
        return all;
    }

    /// <summary>All that is said of the line and the kit, figures included.</summary>
    public static string Text(ReconciliationResult result)
    {
        LineConclusion line = result.Lines[0];
        PresenceDecision? decision = line.Evidence.Risk?.Decision;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{line.State} {line.Basis} {line.Evidence.LookCount} {decision?.LogOdds:R} {decision?.Cut:R} {line.Evidence.Risk?.ExactRisk:R} | {string.Join("; ", line.Reasons)} | {line.Next} | {result.Kit.State} {result.Kit.Risk?.Joint:R} {string.Join("; ", result.Kit.Reasons)} | {result.Sessions[0].Session.Health.State}");
    }
}
