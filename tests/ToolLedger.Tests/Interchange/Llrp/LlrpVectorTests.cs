using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.Json;
using ToolLedger.Identifiers;
using ToolLedger.Interchange.Llrp;
using Xunit;

namespace ToolLedger.Tests.Interchange.Llrp;

/// <summary>Published messages say what their sources say they say, and hand-made ones meet their verdict.</summary>
public sealed class LlrpVectorTests
{
    public static TheoryData<string> PublishedIds => [.. LlrpVector.Published.Select(vector => vector.Id)];

    public static TheoryData<string> RobustnessIds => [.. LlrpVector.Robustness.Select(vector => vector.Id)];

    [Theory]
    [MemberData(nameof(PublishedIds))]
    public void A_published_message_says_what_its_source_says(string id)
    {
        LlrpVector vector = LlrpVector.Published.Single(vector => vector.Id == id);
        var decoder = new LlrpDecoder();
        ReadOnlySpan<byte> rest = vector.Bytes;

        Assert.True(decoder.TryRead(ref rest, out LlrpMessage message));

        Assert.True(rest.IsEmpty);
        Assert.Equal(Int(vector.Says, "version"), message.Version);
        Assert.Equal(Int(vector.Says, "messageType"), (int)message.Type);
        Assert.Equal(vector.Says.GetProperty("messageId").GetUInt32(), message.Id);
        Assert.Equal(Int(vector.Says, "length"), 10 + message.Body.Length);
        CheckTags(vector.Tags, message);
        CheckEvents(vector.Says, message);
        Assert.Null(decoder.End());
    }

    [Theory]
    [MemberData(nameof(RobustnessIds))]
    public void A_hand_made_message_meets_its_verdict(string id)
    {
        LlrpVector vector = LlrpVector.Robustness.Single(vector => vector.Id == id);
        var decoder = new LlrpDecoder();
        ReadOnlySpan<byte> rest = vector.Bytes;
        bool isComplete = decoder.TryRead(ref rest, out LlrpMessage message);
        int faults = decoder.Fault is null ? 0 : 1;
        if (vector.Verdict == "incomplete")
        {
            Assert.False(isComplete);
            Assert.Equal(0, faults);
            Assert.True(decoder.IsInsideMessage);
            return;
        }

        if (isComplete && vector.Verdict != "reject")
        {
            CheckTags(vector.Tags, message);
        }

        LlrpReports reports = message.Reports;
        while (reports.TryRead(out LlrpTagReport report))
        {
            faults += report.Fault is null ? 0 : 1;
        }

        Assert.Equal(vector.Verdict == "reject" ? 1 : 0, faults);
    }

    /// <summary>LLRP 1.1, EPCData: the bits behind the count are not zero in real traffic, and are no part of the tag.</summary>
    [Fact]
    public void Padding_bits_make_no_second_tag()
    {
        JsonElement[] dirty = [.. LlrpVector.Published.SelectMany(vector => vector.Tags).Where(tag => Int(tag, "epcBits") % 8 != 0)];
        Assert.NotEmpty(dirty);
        foreach (JsonElement tag in dirty)
        {
            byte[] bytes = Convert.FromHexString(tag.GetProperty("epc").GetString()!);
            byte[] clean = [.. bytes];
            clean[^1] &= (byte)(0xFF << (8 - (Int(tag, "epcBits") % 8)));

            Epc one = OnlyTag(Frames.Report(Frames.Tag(Frames.EpcData(Int(tag, "epcBits"), Convert.ToHexString(bytes)))));
            Epc other = OnlyTag(Frames.Report(Frames.Tag(Frames.EpcData(Int(tag, "epcBits"), Convert.ToHexString(clean)))));

            Assert.Equal(other, one);
        }
    }

    private static Epc OnlyTag(byte[] frame)
    {
        ReadOnlySpan<byte> rest = frame;
        Assert.True(new LlrpDecoder().TryRead(ref rest, out LlrpMessage message));
        LlrpReports reports = message.Reports;
        Assert.True(reports.TryRead(out LlrpTagReport report));
        Assert.Null(report.Fault);
        return report.Epc;
    }

    private static void CheckTags(JsonElement[] tags, LlrpMessage message)
    {
        LlrpReports reports = message.Reports;
        foreach (JsonElement tag in tags)
        {
            Assert.True(reports.TryRead(out LlrpTagReport report));
            Assert.Null(report.Fault);
            Assert.True(report.HasTag);
            Assert.Equal(Epc.FromBytes(Convert.FromHexString(tag.GetProperty("epc").GetString()!), Int(tag, "epcBits")), report.Epc);
            Assert.Equal(Says(tag, "antennaId"), Text(report.AntennaId));
            Assert.Equal(Says(tag, "peakRssi"), Text(report.PeakRssi));
            Assert.Equal(Says(tag, "channelIndex"), Text(report.ChannelIndex));
            Assert.Equal(Says(tag, "firstSeenUtcUs"), Text(report.FirstSeenUtcMicroseconds));
            Assert.Equal(Says(tag, "firstSeenUptimeUs"), Text(report.FirstSeenUptimeMicroseconds));
            Assert.Equal(Says(tag, "lastSeenUtcUs"), Text(report.LastSeenUtcMicroseconds));
            Assert.Equal(Says(tag, "lastSeenUptimeUs"), Text(report.LastSeenUptimeMicroseconds));
            Assert.Equal(Says(tag, "tagSeenCount"), Text(report.TagSeenCount));
            Assert.Equal(Says(tag, "roSpecId"), Text(report.RoSpecId));
            Assert.Equal(Says(tag, "specIndex"), Text(report.SpecIndex));
            Assert.Equal(Says(tag, "inventoryParameterSpecId"), Text(report.InventoryParameterSpecId));
            Assert.Equal(Says(tag, "accessSpecId"), Text(report.AccessSpecId));
            Assert.Equal(Says(tag, "pc"), Text(report.ProtocolControl));
            Assert.Equal(Says(tag, "crc"), Text(report.Crc));
            CheckParameters(tag, report);
        }

        Assert.False(reports.TryRead(out _));
    }

    private static void CheckParameters(JsonElement tag, LlrpTagReport report)
    {
        var results = new List<string>();
        var customs = new List<string>();
        foreach (LlrpParameter parameter in report.Parameters)
        {
            if (parameter.TryReadAccessResult(out LlrpAccessResult result))
            {
                int? words = result.IsRead ? result.Words.Length / 2 : result.WordsWritten;
                results.Add(string.Create(CultureInfo.InvariantCulture, $"{result.Type} {result.Result} {result.OpSpecId} {words} {Convert.ToHexStringLower(result.Words)}"));
            }
            else if (parameter.IsCustom)
            {
                customs.Add(string.Create(CultureInfo.InvariantCulture, $"{parameter.VendorId} {parameter.Subtype} {Convert.ToHexStringLower(parameter.CustomData)}"));
            }
        }

        Assert.Equal(List(tag, "opResults", "type", "result", "opSpecId", "words", "data"), results);
        Assert.Equal(List(tag, "custom", "vendor", "subtype", "data"), customs);
    }

    private static void CheckEvents(JsonElement says, LlrpMessage message)
    {
        Assert.True(message.TryReadEvents(out IReadOnlyList<LlrpReaderEvent> events, out _));
        if (!says.TryGetProperty("event", out JsonElement told))
        {
            Assert.Empty(events);
            return;
        }

        // The sources list each kind once and makers' own in a list.
        IEnumerable<string> expected = told.EnumerateObject()
            .Where(member => member.Name is not ("utcUs" or "uptimeUs"))
            .SelectMany(member => member.Name == "custom" ? member.Value.EnumerateArray().Select(one => (member.Name, one)) : [(member.Name, member.Value)])
            .Select(item => Line(item.Name, item.Item2));
        Assert.Equal(expected.Order(StringComparer.Ordinal), events.Select(Line).Order(StringComparer.Ordinal));
        Assert.All(events, what => Assert.Equal(Says(told, "utcUs"), Text(what.UtcMicroseconds)));
        Assert.All(events, what => Assert.Equal(Says(told, "uptimeUs"), Text(what.UptimeMicroseconds)));
    }

    private static string Line(string kind, JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => kind + string.Concat(value.EnumerateObject().Where(member => member.Name is not ("data" or "params")).Select(member => " " + member.Value)),
        JsonValueKind.True => kind,
        _ => kind + " " + value,
    };

    private static string Line(LlrpReaderEvent what) => what.Kind switch
    {
        LlrpEventKind.Hopping => Join("hopping", what.HopTableId, what.NextChannelIndex),
        LlrpEventKind.Gpi => Join("gpi", what.GpiPort, what.GpiState == true ? 1 : 0),
        LlrpEventKind.RoSpec => Join("roSpec", what.EventType, what.RoSpecId, what.PreemptingRoSpecId),
        LlrpEventKind.BufferLevelWarning => Join("bufferLevelPercent", what.BufferPercent),
        LlrpEventKind.BufferOverflow => "bufferOverflow",
        LlrpEventKind.ReaderException => Join("readerException", what.Message),
        LlrpEventKind.RfSurvey => Join("rfSurvey", what.EventType, what.RoSpecId, what.SpecIndex),
        LlrpEventKind.AiSpec => what.CollisionSlotCount is null
            ? Join("aiSpec", what.EventType, what.RoSpecId, what.SpecIndex)
            : Join("aiSpec", what.EventType, what.RoSpecId, what.SpecIndex, what.CollisionSlotCount, what.EmptySlotCount),
        LlrpEventKind.Antenna => Join("antenna", what.EventType, what.AntennaId),
        LlrpEventKind.ConnectionAttempt => Join("connectionAttempt", what.ConnectionStatus),
        LlrpEventKind.ConnectionClose => "connectionClose",
        LlrpEventKind.Custom => Join("custom", what.VendorId, what.Subtype),
        _ => what.ToString(),
    };

    private static string Join(string kind, params object?[] values) =>
        kind + string.Concat(values.Select(value => string.Create(CultureInfo.InvariantCulture, $" {value}")));

    private static List<string> List(JsonElement owner, string name, params string[] members) => owner.TryGetProperty(name, out JsonElement list)
        ? [.. list.EnumerateArray().Select(item => string.Join(' ', members.Select(member => Says(item, member) ?? "")))]
        : [];

    private static string? Says(JsonElement owner, string name) => owner.TryGetProperty(name, out JsonElement value) ? value.ToString() : null;

    private static string? Text<T>(T? value)
        where T : struct, IFormattable => value?.ToString(null, CultureInfo.InvariantCulture);

    private static int Int(JsonElement owner, string name) => owner.GetProperty(name).GetInt32();
}
