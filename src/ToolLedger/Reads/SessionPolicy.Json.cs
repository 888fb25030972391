using System;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <content>Ranges, and the stored form inside a site's policy.</content>
public sealed partial record SessionPolicy
{
    private static readonly (TimeSpan Lowest, TimeSpan Highest) ControlTagEdgeRange = Seconds(0.1, 3_600);
    private static readonly (TimeSpan Lowest, TimeSpan Highest) MinimumWindowRange = Seconds(0, 86_400);
    private static readonly (TimeSpan Lowest, TimeSpan Highest) MaximumWindowRange = Seconds(60, 604_800);
    private static readonly (TimeSpan Lowest, TimeSpan Highest) ClockOffsetMaxRange = Seconds(0, 3_600);
    private static readonly (TimeSpan Lowest, TimeSpan Highest) ClockDriftMaxRange = Seconds(0, 3_600);
    private static readonly (TimeSpan Lowest, TimeSpan Highest) SlotLengthRange = Seconds(0.01, 60);
    private static readonly (TimeSpan Lowest, TimeSpan Highest) SilenceGapMaxRange = Seconds(1, 86_400);
    private static readonly (TimeSpan Lowest, TimeSpan Highest) RepeatHorizonRange = Seconds(0, 86_400);
    private static readonly (TimeSpan Lowest, TimeSpan Highest) ClockCorrectionMaxRange = Seconds(1, 3_155_760_000);
    private static readonly (TimeSpan Lowest, TimeSpan Highest) MinimumPassRange = Seconds(0, 3_600);
    private static readonly (TimeSpan Lowest, TimeSpan Highest) SessionAgeMaxRange = Seconds(1, 31_622_400);
    private static readonly (TimeSpan Lowest, TimeSpan Highest) StampDistanceMaxRange = Seconds(86_400, 3_155_760_000);
    private static readonly (TimeSpan Lowest, TimeSpan Highest) LateReadGraceRange = Seconds(0, 86_400);
    private static readonly (int Lowest, int Highest) RepeatReportCountRange = (0, 1_048_576);
    private static readonly (int Lowest, int Highest) LooksKeptRange = (1, 4_096);
    private static readonly (int Lowest, int Highest) TagLimitRange = (1, 4_000_000);
    private static readonly (int Lowest, int Highest) LookLimitRange = (1, 268_435_456);

    /// <summary>Reads the members; absent ones keep their default.</summary>
    internal static SessionPolicy FromJson(JsonElement element, string place, IssueList issues)
    {
        var fields = new JsonFields(element, place, issues);
        var defaults = new SessionPolicy();
        var policy = new SessionPolicy
        {
            ControlTagEdge = fields.Seconds("controlTagEdgeSeconds", defaults.ControlTagEdge, ControlTagEdgeRange.Lowest, ControlTagEdgeRange.Highest),
            MinimumWindow = fields.Seconds("minimumWindowSeconds", defaults.MinimumWindow, MinimumWindowRange.Lowest, MinimumWindowRange.Highest),
            MaximumWindow = fields.Seconds("maximumWindowSeconds", defaults.MaximumWindow, MaximumWindowRange.Lowest, MaximumWindowRange.Highest),
            ClockOffsetMax = fields.Seconds("clockOffsetMaxSeconds", defaults.ClockOffsetMax, ClockOffsetMaxRange.Lowest, ClockOffsetMaxRange.Highest),
            ClockDriftMax = fields.Seconds("clockDriftMaxSeconds", defaults.ClockDriftMax, ClockDriftMaxRange.Lowest, ClockDriftMaxRange.Highest),
            SlotLength = fields.Seconds("slotLengthSeconds", defaults.SlotLength, SlotLengthRange.Lowest, SlotLengthRange.Highest),
            SilenceGapMax = fields.Seconds("silenceGapMaxSeconds", defaults.SilenceGapMax, SilenceGapMaxRange.Lowest, SilenceGapMaxRange.Highest),
            RepeatHorizon = fields.Seconds("repeatHorizonSeconds", defaults.RepeatHorizon, RepeatHorizonRange.Lowest, RepeatHorizonRange.Highest),
            RepeatReportCount = fields.Int32("repeatReportCount", defaults.RepeatReportCount, RepeatReportCountRange.Lowest, RepeatReportCountRange.Highest),
            LooksKept = fields.Int32("looksKept", defaults.LooksKept, LooksKeptRange.Lowest, LooksKeptRange.Highest),
            TagLimit = fields.Int32("tagLimit", defaults.TagLimit, TagLimitRange.Lowest, TagLimitRange.Highest),
            LookLimit = fields.Int32("lookLimit", defaults.LookLimit, LookLimitRange.Lowest, LookLimitRange.Highest),
            ClockCorrectionMax = fields.Seconds("clockCorrectionMaxSeconds", defaults.ClockCorrectionMax, ClockCorrectionMaxRange.Lowest, ClockCorrectionMaxRange.Highest),
            MinimumPass = fields.Seconds("minimumPassSeconds", defaults.MinimumPass, MinimumPassRange.Lowest, MinimumPassRange.Highest),
            SessionAgeMax = fields.Seconds("sessionAgeMaxSeconds", defaults.SessionAgeMax, SessionAgeMaxRange.Lowest, SessionAgeMaxRange.Highest),
            StampDistanceMax = fields.Seconds("stampDistanceMaxSeconds", defaults.StampDistanceMax, StampDistanceMaxRange.Lowest, StampDistanceMaxRange.Highest),
            HostArrivalAccepted = fields.Flag("hostArrivalAccepted", defaults.HostArrivalAccepted),
            LateReadGrace = fields.Seconds("lateReadGraceSeconds", defaults.LateReadGrace, LateReadGraceRange.Lowest, LateReadGraceRange.Highest),
        };
        fields.End();
        return policy;
    }

    /// <summary>Writes an object with every member, in a stable order.</summary>
    internal void WriteJson(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteNumber("controlTagEdgeSeconds", JsonFields.ToSeconds(ControlTagEdge));
        writer.WriteNumber("minimumWindowSeconds", JsonFields.ToSeconds(MinimumWindow));
        writer.WriteNumber("maximumWindowSeconds", JsonFields.ToSeconds(MaximumWindow));
        writer.WriteNumber("clockOffsetMaxSeconds", JsonFields.ToSeconds(ClockOffsetMax));
        writer.WriteNumber("clockDriftMaxSeconds", JsonFields.ToSeconds(ClockDriftMax));
        writer.WriteNumber("slotLengthSeconds", JsonFields.ToSeconds(SlotLength));
        writer.WriteNumber("silenceGapMaxSeconds", JsonFields.ToSeconds(SilenceGapMax));
        writer.WriteNumber("repeatHorizonSeconds", JsonFields.ToSeconds(RepeatHorizon));
        writer.WriteNumber("repeatReportCount", RepeatReportCount);
        writer.WriteNumber("looksKept", LooksKept);
        writer.WriteNumber("tagLimit", TagLimit);
        writer.WriteNumber("lookLimit", LookLimit);
        writer.WriteNumber("clockCorrectionMaxSeconds", JsonFields.ToSeconds(ClockCorrectionMax));
        writer.WriteNumber("minimumPassSeconds", JsonFields.ToSeconds(MinimumPass));
        writer.WriteNumber("sessionAgeMaxSeconds", JsonFields.ToSeconds(SessionAgeMax));
        writer.WriteNumber("stampDistanceMaxSeconds", JsonFields.ToSeconds(StampDistanceMax));
        writer.WriteBoolean("hostArrivalAccepted", HostArrivalAccepted);
        writer.WriteNumber("lateReadGraceSeconds", JsonFields.ToSeconds(LateReadGrace));
        writer.WriteEndObject();
    }

    private static (TimeSpan Lowest, TimeSpan Highest) Seconds(double lowest, double highest) =>
        (TimeSpan.FromSeconds(lowest), TimeSpan.FromSeconds(highest));
}
