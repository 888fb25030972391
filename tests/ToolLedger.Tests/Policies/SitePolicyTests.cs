using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Calibration;
using ToolLedger.Policies;
using ToolLedger.Presence;
using ToolLedger.Reconciliation;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using ToolLedger.Tests.Records;
using ToolLedger.Tests.Reports;
using Xunit;

namespace ToolLedger.Tests.Policies;

public sealed class SitePolicyTests
{
    private const string SchemaName = "site-policy";

    // The published schema refuses unknown members, so it must name every setting that is written.
    [Fact]
    public void The_default_policy_keeps_the_schema() => StoredSchema.AssertAccepts(SchemaName, SitePolicy.Default.ToJson());

    [Fact]
    public void What_is_left_out_has_the_documented_defaults_P0()
    {
        SitePolicy policy = SitePolicy.Parse(Utf8("""{ "schema": "toolledger/site-policy/1" }"""));

        Assert.Equal(SitePolicy.Default.Digest, policy.Digest);
        Assert.Equal("P0", policy.Name);
        Assert.Equal(TimeSpan.FromSeconds(5), policy.Sessions.ControlTagEdge);
        Assert.Equal(TimeSpan.FromSeconds(20), policy.Sessions.MinimumWindow);
        Assert.Equal((TimeSpan.FromDays(30), false, TimeSpan.FromSeconds(30)), (policy.Sessions.StampDistanceMax, policy.Sessions.HostArrivalAccepted, policy.Sessions.LateReadGrace));
        Assert.Equal((TimeSpan.FromSeconds(10), 20), (policy.Findings.BriefSpanMax, policy.Findings.NearMissTagsMax));
        Assert.Equal(3, Assert.IsType<CountingPolicy>(policy.Presence).LooksNeeded);
        Assert.Equal((true, 2), (policy.Inventory.ManualInventoryAllowed, policy.Inventory.ManualInventoryPersonsNeeded));
        Assert.Equal((30, DueConvention.DayIncluded), (policy.Calibration.DueSoonDays, policy.Calibration.Convention));
        Assert.Equal("UTC", policy.Calendar.Name);
    }

    [Property(Arbitrary = [typeof(PolicyGenerators)], MaxTest = 50)]
    public void What_is_written_is_read_again_with_the_same_digest_and_keeps_the_schema(SitePolicy policy)
    {
        byte[] json = policy.ToJson();

        StoredSchema.AssertAccepts(SchemaName, json);
        SitePolicy read = SitePolicy.Parse(json);
        Assert.Equal(json, read.ToJson());
        Assert.Equal(policy.Digest, read.Digest);
    }

    // Any setting that a reconciliation uses is covered by its digest; the name of the policy is not one.
    [Property(Arbitrary = [typeof(PolicyGenerators)], MaxTest = 50)]
    public void The_part_for_reconciliation_carries_every_setting_but_the_name(SitePolicy one, SitePolicy other)
    {
        Digest Part(SitePolicy policy) => new Reconciler(policy.Reconciliation).PolicyDigest;

        Assert.Equal(Part(one), Part(one with { Name = other.Name }));
        Assert.NotEqual(Part(one with { Name = "same" }), Part((one with { Name = "same" }) with { Calibration = one.Calibration with { DueSoonDays = 366 - one.Calibration.DueSoonDays + (one.Calibration.DueSoonDays == 183 ? 1 : 0) } }));
        Assert.Equal(one.Digest == (other with { Name = one.Name }).Digest, Part(one) == Part(other));
    }

    [Property(Arbitrary = [typeof(PolicyGenerators)], MaxTest = 50)]
    public Property TryParse_never_throws(SitePolicy policy, PositiveInt[] places, byte[] values) =>
        DamagedRecord.IsReadOrRefused<SitePolicy>(policy.ToJson(), places, values, SitePolicy.TryParse);

    [Fact]
    public void Every_fault_is_told_in_one_go_with_its_place()
    {
        byte[] json = Utf8("""
            {
              "schema": "toolledger/site-policy/1",
              "name": "Night\u0007shift",
              "sessions": { "minimumWindowSeconds": -1, "slotLenghtSeconds": 0.5, "hostArrivalAccepted": 1, "stampDistanceMaxSeconds": 3600, "lateReadGraceSeconds": -1 },
              "presence": { "looksNeeded": 0 },
              "inventory": { "manualInventoryPersonsNeeded": 5, "evidenceAgeMaxSeconds": 0 },
              "calibration": { "dueConvention": "guess", "dueSoonDays": 30.5 },
              "findings": { "nearMissTagsMax": 1001, "briefSpanMaxSeconds": 601 },
              "calendar": { "offsetMinutes": 900 },
              "colour": "red"
            }
            """);

        Assert.False(StoredSchema.Accepts(SchemaName, json));
        Assert.False(SitePolicy.TryParse(json, out SitePolicy? policy, out IReadOnlyList<RecordIssue> issues));
        Assert.Null(policy);
        Assert.Equal(
            [
                "$.name record.text-not-printable",
                "$.sessions.minimumWindowSeconds record.out-of-range",
                "$.sessions.stampDistanceMaxSeconds record.out-of-range",
                "$.sessions.hostArrivalAccepted record.wrong-type",
                "$.sessions.lateReadGraceSeconds record.out-of-range",
                "$.sessions record.unknown-member",
                "$.presence.looksNeeded record.out-of-range",
                "$.inventory.manualInventoryPersonsNeeded record.out-of-range",
                "$.inventory.evidenceAgeMaxSeconds record.out-of-range",
                "$.calibration.dueSoonDays record.out-of-range",
                "$.calibration.dueConvention record.unknown-word",
                "$.findings.briefSpanMaxSeconds record.out-of-range",
                "$.findings.nearMissTagsMax record.out-of-range",
                "$.calendar.offsetMinutes record.out-of-range",
                "$ record.unknown-member",
            ],
            issues.Select(issue => $"{issue.Place} {issue.Rule}"),
            StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("another schema", """{ "schema": "toolledger/site-policy/2" }""")]
    [InlineData("no schema", "{}")]
    [InlineData("a list", "[]")]
    [InlineData("nothing", "")]
    [InlineData("a setting twice", """{ "schema": "toolledger/site-policy/1", "name": "a", "name": "b" }""")]
    [InlineData("not a number", """{ "schema": "toolledger/site-policy/1", "calibration": { "dueSoonDays": NaN } }""")]
    public void A_policy_of_another_form_is_refused(string why, string json)
    {
        Assert.False(SitePolicy.TryParse(Utf8(json), out _, out IReadOnlyList<RecordIssue> issues), why);
        Assert.NotEmpty(issues);
        Assert.Throws<RecordException>(() => SitePolicy.Parse(Utf8(json)));
    }

    private static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);
}
