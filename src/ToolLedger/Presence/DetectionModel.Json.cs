using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Presence;

public sealed partial record DetectionModel
{
    /// <summary>Reads {"obscuredShare", "present": {"a", "b"}, "strayShare", "stray": {"a", "b"}}: all or nothing, since a part of one model with the rest of another is neither.</summary>
    internal static DetectionModel FromFields(JsonFields fields, IssueList issues)
    {
        int before = issues.Reported;
        fields.Require("obscuredShare");
        fields.Require("strayShare");
        decimal obscured = fields.Decimal("obscuredShare", 0, 0, MaxObscuredShare);
        decimal strays = fields.Decimal("strayShare", 1, MinStrayShare, 1);
        BetaRate present = Rate(fields, "present");
        BetaRate stray = Rate(fields, "stray");
        fields.End();
        if (issues.Reported == before && WhyRefused(present, stray) is { } why)
        {
            fields.Report("stray", why);
        }

        return issues.Reported == before ? new DetectionModel(obscured, present, strays, stray) : Example;
    }

    internal void WriteJson(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        WriteMembers(writer);
        writer.WriteEndObject();
    }

    internal void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteNumber("obscuredShare"u8, Plain(ObscuredShare));
        Write(writer, "present", Present);
        writer.WriteNumber("strayShare"u8, Plain(StrayShare));
        Write(writer, "stray", Stray);
    }

    /// <summary>Without zeros at the end, so that equal numbers have equal bytes.</summary>
    internal static decimal Plain(decimal number) => number / 1.000000000000000000000000000000000m;

    private static BetaRate Rate(JsonFields fields, string name)
    {
        fields.Require(name);
        if (fields.Child(name) is not { } child)
        {
            return new BetaRate(1, 1);
        }

        child.Require("a");
        child.Require("b");
        var rate = new BetaRate(
            child.Decimal("a", 1, BetaRate.MinParameter, BetaRate.MaxParameter), child.Decimal("b", 1, BetaRate.MinParameter, BetaRate.MaxParameter));
        child.End();
        return rate;
    }

    private static void Write(Utf8JsonWriter writer, string name, BetaRate rate)
    {
        writer.WriteStartObject(name);
        writer.WriteNumber("a"u8, Plain(rate.A));
        writer.WriteNumber("b"u8, Plain(rate.B));
        writer.WriteEndObject();
    }
}
