using System;
using Xunit;

namespace ToolLedger.Identifiers.Tests;

/// <summary>Patterns of GS1 TDS 2.3, chapter 13, and pure identity patterns.</summary>
public sealed class EpcPatternTests
{
    [Theory]
    [InlineData("urn:epc:pat:sgtin-96:3.0614141.812345.6789", true)]
    [InlineData("urn:epc:pat:sgtin-96:3.0614141.812345.*", true)]
    [InlineData("urn:epc:pat:sgtin-96:*.*.*.*", true)]
    [InlineData("urn:epc:pat:sgtin-96:[2-4].0614141.812345.[6000-7000]", true)]
    [InlineData("urn:epc:pat:sgtin-96:3.0614141.[812340-812349].6789", true)]
    [InlineData("urn:epc:pat:sgtin-96:3.0614141.812345.[6790-7000]", false)]
    [InlineData("urn:epc:pat:sgtin-96:[0-2].*.*.*", false)]
    [InlineData("urn:epc:pat:sgtin-198:3.0614141.812345.*", false)]
    [InlineData("urn:epc:pat:giai-96:*.*.*", false)]
    [InlineData("urn:epc:idpat:sgtin:0614141.812345.6789", true)]
    [InlineData("urn:epc:idpat:sgtin:0614141.812345.*", true)]
    [InlineData("urn:epc:idpat:sgtin:0614141.*.*", true)]
    [InlineData("urn:epc:idpat:sgtin:*.*.*", true)]
    [InlineData("urn:epc:idpat:sgtin:0614141.812346.*", false)]
    [InlineData("urn:epc:idpat:grai:*.*.*", false)]
    public void A_pattern_holds_what_it_says_and_is_written_as_it_was_read(string uri, bool holds)
    {
        Epc epc = EpcFields.ParseTagUri("urn:epc:tag:sgtin-96:3.0614141.812345.6789".AsSpan()).ToEpc();
        EpcPattern pattern = EpcPattern.Parse(uri.AsSpan());
        Assert.Equal(holds, pattern.Matches(epc));
        Assert.Equal(uri, pattern.ToString());
        Assert.Equal(pattern, EpcPattern.Parse(pattern.ToString().AsSpan()));
        Assert.Equal(pattern.GetHashCode(), EpcPattern.Parse(uri.AsSpan()).GetHashCode());
    }

    // A padded component is a number and a length: prefix 0614141 is not prefix 00614141.
    [Fact]
    public void Padded_components_match_by_value_and_length()
    {
        EpcPattern pattern = EpcPattern.Parse("urn:epc:pat:sgtin-96:3.0614141.[000001-000009].1".AsSpan());
        Assert.True(pattern.Matches(EpcFields.ParseTagUri("urn:epc:tag:sgtin-96:3.0614141.000005.1".AsSpan())));
        Assert.False(pattern.Matches(EpcFields.ParseTagUri("urn:epc:tag:sgtin-96:3.00614141.00005.1".AsSpan())));
        Assert.False(pattern.Matches(EpcFields.ParseTagUri("urn:epc:tag:sgtin-96:3.0614141.000010.1".AsSpan())));
    }

    [Theory]
    [InlineData("urn:epc:pat:adi-var:[50-60].35962.*.*", "urn:epc:tag:adi-var:58.35962.PQ7VZ4.M37GXB92", true)]
    [InlineData("urn:epc:pat:adi-var:58.*.PQ7VZ4.*", "urn:epc:tag:adi-var:58.35962.PQ7VZ4.M37GXB92", true)]
    [InlineData("urn:epc:pat:gid-96:*.5.[1-9]", "urn:epc:tag:gid-96:1.5.7", true)]
    [InlineData("urn:epc:pat:usdod-96:*.CAGEY.[5000-6000]", "urn:epc:tag:usdod-96:3.CAGEY.5678", true)]
    [InlineData("urn:epc:pat:itip-110:*.*.*.[01-05].*.*", "urn:epc:tag:itip-110:1.4012345.012345.03.05.987", true)]
    [InlineData("urn:epc:pat:sgtin-198:*.*.*.a%2Fb*", "urn:epc:tag:sgtin-198:1.4012345.012345.a%2Fb*", true)]
    [InlineData("urn:epc:pat:sgcn-96:*.4012345.67890.04711", "urn:epc:tag:sgcn-96:1.4012345.67890.4711", false)]
    public void Patterns_of_other_schemes(string pattern, string tag, bool holds) =>
        Assert.Equal(holds, EpcPattern.Parse(pattern.AsSpan()).Matches(EpcFields.ParseTagUri(tag.AsSpan())));

    [Theory]
    [InlineData("an asterisk for the prefix leaves the reference open", "urn:epc:pat:sgtin-96:3.*.812345.6789", EpcRule.PatternForm)]
    [InlineData("the prefix is no range", "urn:epc:pat:sgtin-96:3.[0614141-0614142].*.*", EpcRule.PatternForm)]
    [InlineData("lowest above highest", "urn:epc:pat:sgtin-96:3.0614141.*.[9-8]", EpcRule.PatternForm)]
    [InlineData("a text is no range", "urn:epc:pat:sgtin-198:3.0614141.812345.[1-9]", EpcRule.PatternForm)]
    [InlineData("a numeric string is no range", "urn:epc:pat:sgcn-96:3.4012345.67890.[1-9]", EpcRule.PatternForm)]
    [InlineData("a bound out of range", "urn:epc:pat:sgtin-96:3.0614141.812345.[1-274877906944]", EpcRule.FitsBits)]
    [InlineData("a bound with a leading zero", "urn:epc:pat:sgtin-96:3.0614141.812345.[01-2]", EpcRule.NoLeadingZero)]
    [InlineData("filter over its bits", "urn:epc:pat:sgtin-96:[0-8].*.*.*", EpcRule.FitsBits)]
    [InlineData("range not closed", "urn:epc:pat:sgtin-96:3.0614141.812345.[1-2", EpcRule.PatternForm)]
    [InlineData("components missing", "urn:epc:pat:sgtin-96:3.0614141.812345", EpcRule.ComponentCount)]
    [InlineData("another family", "urn:epc:tag:sgtin-96:3.0614141.812345.1", EpcRule.UriPrefix)]
    [InlineData("no such scheme", "urn:epc:pat:sgtin-97:3.0614141.812345.1", EpcRule.SchemeName)]
    [InlineData("open in the middle", "urn:epc:idpat:sgtin:*.812345.1", EpcRule.PatternForm)]
    [InlineData("no ranges in identities", "urn:epc:idpat:sgtin:0614141.812345.[1-2]", EpcRule.PatternForm)]
    public void Refusals_name_the_rule(string why, string uri, EpcRule rule)
    {
        Assert.False(EpcPattern.TryParse(uri.AsSpan(), out EpcPattern? pattern, out EpcFault fault), why);
        Assert.Null(pattern);
        Assert.Equal(rule, fault.Rule);
        Assert.Throws<FormatException>(() => EpcPattern.Parse(uri.AsSpan()));
    }
}
