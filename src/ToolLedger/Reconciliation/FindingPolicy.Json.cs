using System;
using System.Text.Json;
using ToolLedger.Presence;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

public sealed partial class FindingPolicy
{
    internal static FindingPolicy FromJson(JsonElement element, string place, IssueList issues)
    {
        var fields = new JsonFields(element, place, issues);
        var fallback = new FindingPolicy();
        var policy = new FindingPolicy
        {
            PassingTagsNeeded = fields.Int32("passingTagsNeeded", fallback.PassingTagsNeeded, 2, 1000),
            PassingSpanMax = fields.Seconds("passingSpanMaxSeconds", fallback.PassingSpanMax, TimeSpan.Zero, TimeSpan.FromMinutes(10)),
            SharedCauseLinesNeeded = fields.Int32("sharedCauseLinesNeeded", fallback.SharedCauseLinesNeeded, 2, 1000),
            AttenuationDecibels = fields.Int32("attenuationDecibels", fallback.AttenuationDecibels, 1, 60),
            BriefSpanMax = fields.Seconds("briefSpanMaxSeconds", fallback.BriefSpanMax, TimeSpan.Zero, TimeSpan.FromMinutes(10)),
            NearMissTagsMax = fields.Int32("nearMissTagsMax", fallback.NearMissTagsMax, 0, 1000),
            FadingMissSteps = fields.Int32("fadingMissSteps", fallback.FadingMissSteps, 1, TagFadingWatch.MaxLimit),
            FadingLimit = fields.Int32("fadingLimit", fallback.FadingLimit, 1, TagFadingWatch.MaxLimit),
        };
        fields.End();
        return policy;
    }

    internal void WriteJson(Utf8JsonWriter writer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStartObject();
        writer.WriteNumber("passingTagsNeeded"u8, PassingTagsNeeded);
        writer.WriteNumber("passingSpanMaxSeconds"u8, (decimal)PassingSpanMax.Ticks / TimeSpan.TicksPerSecond);
        writer.WriteNumber("sharedCauseLinesNeeded"u8, SharedCauseLinesNeeded);
        writer.WriteNumber("attenuationDecibels"u8, AttenuationDecibels);
        writer.WriteNumber("briefSpanMaxSeconds"u8, (decimal)BriefSpanMax.Ticks / TimeSpan.TicksPerSecond);
        writer.WriteNumber("nearMissTagsMax"u8, NearMissTagsMax);
        writer.WriteNumber("fadingMissSteps"u8, FadingMissSteps);
        writer.WriteNumber("fadingLimit"u8, FadingLimit);
        writer.WriteEndObject();
    }
}
