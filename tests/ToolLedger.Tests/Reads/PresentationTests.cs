using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using System.Text.Json;
using FsCheck.Xunit;
using Json.Schema;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using ToolLedger.Tests.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reads;

public sealed class PresentationTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(RepositoryFiles.ReadText("docs", "schemas", "presentation.schema.json"));
    private static readonly string Good = RepositoryFiles.ReadText("tests", "ToolLedger.Tests", "Reads", "Data", "presentation.json");

    /// <summary>Why, what to replace, by what, the first issue expected, and whether a schema can say so.</summary>
    public static TheoryData<string, string, string, string, bool> OneChange { get; } = new()
    {
        { "other version", "presentation/1", "presentation/2", "$ record.schema-version", true },
        { "unknown member", "\"session\"", "\"note\": 1, \"session\"", "$ record.unknown-member", true },
        { "no session", "\"session\": \"2026-03-01 K1 closeout\",", "", "$ record.missing-member", true },
        { "session with a control character", "K1 closeout", "K1\\u001b[2J", "$.session record.text-not-printable", true },
        { "no station", "\"station\":", "\"station2\":", "$ record.unknown-member", true },
        { "station without antennas", "\"antennas\": [", "\"x\": [", "$.station record.unknown-member", true },
        { "antenna 0", "1,\n      2", "0", "$.station.antennas[0] record.out-of-range", true },
        { "antenna 1.5", "1,\n      2", "1.5", "$.station.antennas[0] record.out-of-range", true },
        { "antenna twice", "1,\n      2", "1,\n      1", "$.station.antennas presentation.station-antennas", true },
        { "no antenna", "1,\n      2", "", "$.station.antennas presentation.station-antennas", true },
        { "control tag without digits", "epc:C00000000000000000000001", "epc:", "$.station.controlTags[0].tag presentation.bad-tag", true },
        { "control tag on another antenna", "\"antenna\": 2\n      }\n    ]\n  }", "\"antenna\": 3\n      }\n    ]\n  }", "$.station.controlTags[1].antenna presentation.control-tag-antenna", false },
        { "same kit twice", "\"K2\"", "\"K1\"", "$.kits[1] presentation.same-kit-twice", true },
        { "kit is a number", "\"K2\"", "2", "$.kits[1] record.wrong-type", true },
        { "start without offset", "2026-03-01T16:55:00+01:00", "2026-03-01T16:55:00", "$.from record.time-without-offset", true },
        { "end before start", "2026-03-01T16:56:00", "2026-03-01T16:54:00", "$.until presentation.end-before-start", false },
        { "pass before start", "16:55:30.5", "16:54:30.5", "$.passStarts[0] presentation.pass-out-of-order", false },
        { "pass after end", "16:55:30.5", "16:56:30.5", "$.passStarts[0] presentation.pass-out-of-order", false },
        { "year 10000", "2026-03-01T16:56:00+01:00", "10000-01-01T00:00:00Z", "$.until record.time-out-of-range", true },
        { "offset of 200 years", "-0.25", "6311520000", "$.readerClockOffsetSeconds record.out-of-range", true },
        { "offset finer than 100 ns", "-0.25", "0.00000001", "$.readerClockOffsetSeconds record.out-of-range", false },
        { "offset is text", "-0.25", "\"-0.25\"", "$.readerClockOffsetSeconds record.wrong-type", true },
        { "unknown loss", "antenna-disconnected", "rain", "$.losses[0].kind record.unknown-word", true },
        { "loss is null", "\"losses\": [", "\"losses\": [null,", "$.losses[0] record.wrong-type", true },
        { "control tag is null", "\"controlTags\": [", "\"controlTags\": [null,", "$.station.controlTags[0] record.wrong-type", true },
        { "kits are null", "\"kits\": [", "\"kits\": null, \"x\": [", "$ record.wrong-type", true },
        { "nearby kit without a name", "\"kit\": \"K7\",", "", "$.nearbyKits[0] record.missing-member", true },
        { "nearby kit is presented", "\"kit\": \"K7\"", "\"kit\": \"K2\"", "$.nearbyKits[0] presentation.nearby-kit-presented", false },
        { "nearby kit left before it came", "15:55:29Z", "15:29:29Z", "$.nearbyKits[0].until presentation.nearby-end-before-start", false },
        { "nearby kit without a time", "\"from\": \"2026-03-01T15:50:00Z\"", "\"until\": \"2026-03-01T15:50:00Z\"", "$.nearbyKits[1] record.missing-member", true },
        { "nearby kit is null", "\"nearbyKits\": [", "\"nearbyKits\": [null,", "$.nearbyKits[0] record.wrong-type", true },
        { "nearby kits are null", "\"nearbyKits\": [", "\"nearbyKits\": null, \"x\": [", "$ record.wrong-type", true },
        { "unknown source of times", "\"kits\"", "\"timeSource\": \"sundial\", \"kits\"", "$.timeSource record.unknown-word", true },
        { "offset of arrival times", "\"kits\"", "\"timeSource\": \"host-arrival\", \"kits\"", "$.timeSource presentation.offset-of-arrival-times", false },
        { "losses are null", "\"losses\": [", "\"losses\": null, \"x\": [", "$ record.wrong-type", true },
        { "station is null", "\"station\": {", "\"station\": null, \"x\": {", "$ record.wrong-type", true },
        { "antennas are null", "\"antennas\": [", "\"antennas\": null, \"x\": [", "$.station record.wrong-type", true },
    };

    [Theory, MemberData(nameof(OneChange))]
    public void One_change_is_refused_with_place_and_rule(string why, string from, string to, string issue, bool schemaSays)
    {
        string changed = Good.Replace(from, to, StringComparison.Ordinal);
        Assert.NotEqual(Good, changed, StringComparer.Ordinal);
        Assert.False(Presentation.TryParse(Encoding.UTF8.GetBytes(changed), out _, out IReadOnlyList<RecordIssue> issues), why);
        Assert.Equal(issue, $"{issues[0].Place} {issues[0].Rule}");
        Assert.Equal(!schemaSays, IsValid(changed));
    }

    [Fact]
    public void The_example_is_read_and_written_byte_for_byte()
    {
        var presentation = Presentation.Parse(Encoding.UTF8.GetBytes(Good));
        Assert.Equal(Good, Encoding.UTF8.GetString(presentation.ToJson()));
        Assert.True(IsValid(Good));
        Assert.Equal(TimeSpan.FromSeconds(-0.25), presentation.ReaderClockOffset);
        Assert.Equal(TimeSpan.Zero, presentation.ReaderClockOffsetAfter);
        Assert.True(presentation.Presents(new KitId("K2")));
        Assert.False(presentation.Presents(new KitId("K3")));
        Assert.Equal(new ControlTag(TagId.FromText("RING 7"), new AntennaPort(2)), presentation.Station.ControlTags[1]);
    }

    [Property(Arbitrary = [typeof(AnyPresentation)])]
    public void A_presentation_comes_back_from_its_json_and_is_valid(Presentation presentation)
    {
        byte[] json = presentation.ToJson();
        var back = Presentation.Parse(json);
        Assert.Equal(json, back.ToJson());
        Assert.Equal(presentation.Digest, back.Digest);
        Assert.Equal(presentation.Losses, back.Losses);
        Assert.Equal(presentation.PassStarts, back.PassStarts);
        Assert.Equal(presentation.Kits, back.Kits);
        Assert.True(IsValid(Encoding.UTF8.GetString(json)));
    }

    [Property]
    public void Random_bytes_are_refused_with_an_issue_and_never_throw(byte[] bytes)
    {
        Assert.False(Presentation.TryParse(bytes, out _, out IReadOnlyList<RecordIssue> issues));
        Assert.NotEmpty(issues);
    }

    // Every single change of a byte is read or refused; nothing throws.
    [Property(MaxTest = 300)]
    public void Damaged_bytes_are_read_or_refused_and_never_throw(ushort at, byte value)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(Good);
        bytes[at % bytes.Length] = value;
        Assert.Equal(Presentation.TryParse(bytes, out _, out IReadOnlyList<RecordIssue> issues), issues.Count == 0);
    }

    [Fact]
    public void A_builder_refuses_a_presentation_that_does_not_fit_together()
    {
        var presentation = new Presentation
        {
            Id = new SessionId("S1"),
            Station = SessionScene.R1,
            Kits = [],
            From = SessionScene.Start,
            Until = SessionScene.Start,
        };
        RecordException exception = Assert.Throws<RecordException>(() => new ReadSessionBuilder(presentation, new SessionPolicy()));
        Assert.Equal("presentation.end-before-start", Assert.Single(exception.Issues).Rule);
    }

    [Fact]
    public void What_the_host_knew_at_the_end_is_used_in_a_replay()
    {
        var presentation = Presentation.Parse(Encoding.UTF8.GetBytes(Good.Replace("text:RING 7", "text:RING 8", StringComparison.Ordinal)));
        var builder = new ReadSessionBuilder(presentation, new SessionPolicy());
        ReadSession session = builder.Close(presentation.Until!.Value);
        Assert.Equal(TimeSpan.Zero, session.ClockOffsetAfter);
        Assert.Contains(session.Health.Reasons, reason => reason.Kind == SessionReasons.Loss);
        Assert.DoesNotContain(session.Health.Reasons, reason => reason.Kind == SessionReasons.ClockOffsetUnknown);
        Assert.Equal([1, 2], session.Passes.Select(pass => pass.Number));
    }

    private static bool IsValid(string json) => Schema.Evaluate(JsonDocument.Parse(json).RootElement).IsValid;
}
