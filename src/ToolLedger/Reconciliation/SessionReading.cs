using System;
using System.Collections.Generic;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>A session's tags looked up once, so that many kits can be reconciled from one pass over it.</summary>
internal sealed class SessionReading
{
    private readonly List<TagReading> tags;
    private readonly Dictionary<ToolId, List<TagReading>>? reencoded;

    private SessionReading(ReadSession session, List<TagReading> tags, TagRegister register)
    {
        Session = session;
        this.tags = tags;
        foreach (TagReading reading in tags)
        {
            if (reading is not { Kind: TagReadingKind.Reencoded, Evidence.LastSeen: { } at })
            {
                continue;
            }

            // Where several tools have live tags of that identity, it may be the tag of any.
            foreach (ToolId tool in register.ToolsByDecodedIdentity(reading.Evidence.Tag, at))
            {
                reencoded ??= [];
                if (!reencoded.TryGetValue(tool, out List<TagReading>? list))
                {
                    reencoded.Add(tool, list = []);
                }

                list.Add(reading);
            }
        }
    }

    public ReadSession Session { get; }

    public IReadOnlyList<TagReading> Tags => tags;

    public static SessionReading Of(ReadSession session, TagRegister register, KitRegister kits, DateTimeOffset asOf)
    {
        var controlTags = new HashSet<TagId>();
        foreach (ControlTag control in session.Presentation.Station.ControlTags)
        {
            controlTags.Add(control.Tag);
        }

        var list = new List<TagReading>(session.TagCount);
        foreach (TagEvidence evidence in session.Tags)
        {
            list.Add(controlTags.Contains(evidence.Tag)
                ? new TagReading(evidence, TagReadingKind.ControlTag, null, null, null)
                : LookUp(evidence, register, kits, asOf));
        }

        return new SessionReading(session, list, register);
    }

    public IReadOnlyList<TagReading> ReencodedOf(ToolId tool)
        => reencoded?.GetValueOrDefault(tool) ?? (IReadOnlyList<TagReading>)[];

    private static TagReading LookUp(TagEvidence evidence, TagRegister register, KitRegister kits, DateTimeOffset asOf)
    {
        if (evidence.LastSeen is not { } at)
        {
            return new TagReading(evidence, TagReadingKind.Unknown, null, null, null);
        }

        if (register.FindLive(evidence.Tag, at) is { } live)
        {
            return new TagReading(evidence, TagReadingKind.Live, live, live.Tool, kits.KitOf(live.Tool, asOf));
        }

        TagBinding? past = null;
        foreach (TagBinding binding in register.HistoryOf(evidence.Tag))
        {
            // A binding that begins after the read says nothing of it: today's knowledge may not rewrite yesterday's evidence.
            if (binding.From <= at && (past is null || binding.From > past.From))
            {
                past = binding;
            }
        }

        if (past is not null)
        {
            return new TagReading(evidence, TagReadingKind.Retired, past, past.Tool, kits.KitOf(past.Tool, asOf));
        }

        return register.ToolByDecodedIdentity(evidence.Tag, at) is { } tool
            ? new TagReading(evidence, TagReadingKind.Reencoded, null, tool, kits.KitOf(tool, asOf))
            : new TagReading(evidence, TagReadingKind.Unknown, null, null, null);
    }
}
