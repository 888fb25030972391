using System;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Presence;

public sealed partial class StatedRiskPolicy
{
    internal static StatedRiskPolicy FromJsonObject(JsonElement element, string place, IssueList issues)
    {
        var fields = new JsonFields(element, place, issues);
        var fallback = new StatedRiskPolicy();
        fields.Word("kind", true, ("counting", true), ("stated-risk", true));
        var policy = new StatedRiskPolicy
        {
            KitRiskLimit = fields.Decimal("kitRiskLimit", fallback.KitRiskLimit, 0.000000001m, 0.5m),
            LineRiskMax = fields.Decimal("lineRiskMax", fallback.LineRiskMax, 0.000000001m, 0.5m),
            RobustnessFactor = fields.Decimal("robustnessFactor", fallback.RobustnessFactor, 1, 10),
            AbsentShare = fields.Decimal("absentShare", fallback.AbsentShare, MinAbsentShare, MaxAbsentShare),
            CustodyShares = fields.Child("custodyShares") is { } shares ? CustodyShares.FromFields(shares) : fallback.CustodyShares,
            KitAwayShare = fields.Decimal("kitAwayShare", fallback.KitAwayShare, 0, MaxAbsentShare),
            ReaderDownShare = fields.Decimal("readerDownShare", fallback.ReaderDownShare, 0, MaxAbsentShare),
            LineCountAssumed = fields.Int32("lineCountAssumed", fallback.LineCountAssumed, 1, MaxLineCount),
            EpcOnlyAccepted = fields.Flag("epcOnlyAccepted", fallback.EpcOnlyAccepted),
            Model = fields.Child("model") is { } model ? DetectionModel.FromFields(model, issues) : fallback.Model,
            Models = StationModel.FromFields(fields, issues),
        };
        fields.End();
        return policy;
    }

    internal override void WriteJson(Utf8JsonWriter writer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStartObject();
        writer.WriteString("kind"u8, Kind);
        writer.WriteNumber("kitRiskLimit"u8, DetectionModel.Plain(KitRiskLimit));
        writer.WriteNumber("lineRiskMax"u8, DetectionModel.Plain(LineRiskMax));
        writer.WriteNumber("robustnessFactor"u8, DetectionModel.Plain(RobustnessFactor));
        writer.WriteNumber("absentShare"u8, DetectionModel.Plain(AbsentShare));
        writer.WritePropertyName("custodyShares"u8);
        CustodyShares.WriteJson(writer);
        writer.WriteNumber("kitAwayShare"u8, DetectionModel.Plain(KitAwayShare));
        writer.WriteNumber("readerDownShare"u8, DetectionModel.Plain(ReaderDownShare));
        writer.WriteNumber("lineCountAssumed"u8, LineCountAssumed);
        writer.WriteBoolean("epcOnlyAccepted"u8, EpcOnlyAccepted);
        writer.WritePropertyName("model"u8);
        Model.WriteJson(writer);
        if (Models.Count > 0)
        {
            writer.WriteStartArray("models"u8);
            foreach (StationModel model in Models)
            {
                model.WriteJson(writer);
            }

            writer.WriteEndArray();
        }

        writer.WriteEndObject();
    }
}
