using System;
using ToolLedger.Identifiers.Schemes;
using Xunit;

namespace ToolLedger.Identifiers.Tests.Schemes;

public sealed class TypedKeyTests
{
    [Fact]
    public void A_tag_gives_its_typed_value_and_the_value_gives_the_tag_back()
    {
        Epc epc = Epc.Parse("3414257BF40000000000162E");
        Assert.True(epc.TryGetKey(out Giai giai));
        Assert.Equal("0614141", giai.CompanyPrefix.ToString());
        Assert.Equal(5678UL, giai.AssetReference.Number);
        Assert.Equal("urn:epc:id:giai:0614141.5678", giai.ToString());
        Assert.True(giai.Identity.TryEncode(EpcScheme.Giai96, 0, out Epc back, out _));
        Assert.Equal(epc, back);
        Assert.False(epc.TryGetKey(out Sgtin _));
    }

    [Fact]
    public void A_long_and_a_short_coding_of_the_same_serial_number_hold_equal_identities()
    {
        Assert.True(Sgtin.TryCreate("0614141".AsSpan(), "812345".AsSpan(), "6789".AsSpan(), out Sgtin sgtin, out _));
        Assert.True(sgtin.Identity.TryEncode(EpcScheme.Sgtin96, 3, out Epc shorter, out _));
        Assert.True(sgtin.Identity.TryEncode(EpcScheme.Sgtin198, 3, out Epc longer, out _));
        Assert.Equal("3074257BF7194E4000001A85", shorter.ToString());
        Assert.Equal(198, longer.BitCount);
        Assert.True(shorter.TryGetKey(out Sgtin fromShorter));
        Assert.True(longer.TryGetKey(out Sgtin fromLonger));
        Assert.Equal(fromShorter, fromLonger);
    }

    [Theory]
    [InlineData("06141", "8123456", "1", EpcRule.CompanyPrefixLength)]
    [InlineData("0614141", "81234", "1", EpcRule.DigitCount)]
    [InlineData("0614141", "812345", "", EpcRule.NotEmpty)]
    [InlineData("0614141", "812345", "123456789012345678901", EpcRule.MaximumLength)]
    [InlineData("0614141", "812345", "a b", EpcRule.CharacterSet)]
    [InlineData("0614141", "812345", "a#b", EpcRule.CharacterSet)]
    [InlineData("061414X", "812345", "1", EpcRule.DecimalDigits)]
    public void Components_that_break_a_rule_make_no_value(string prefix, string item, string serial, EpcRule rule)
    {
        Assert.False(Sgtin.TryCreate(prefix.AsSpan(), item.AsSpan(), serial.AsSpan(), out Sgtin key, out EpcFault fault));
        Assert.Equal(rule, fault.Rule);
        Assert.Equal(default, key);
    }

    // A serial number with leading zeros has no 96-bit coding: it must not be trimmed (TDS 2.3, s.14.3.1).
    [Theory]
    [InlineData("0123", EpcRule.NoLeadingZero)]
    [InlineData("274877906944", EpcRule.FitsBits)]
    [InlineData("12A", EpcRule.DecimalDigits)]
    public void A_scheme_that_cannot_hold_an_identity_says_why(string serial, EpcRule rule)
    {
        Assert.True(Sgtin.TryCreate("0614141".AsSpan(), "812345".AsSpan(), serial.AsSpan(), out Sgtin sgtin, out _));
        Assert.False(sgtin.Identity.TryEncode(EpcScheme.Sgtin96, 3, out Epc epc, out EpcFault fault));
        Assert.Equal(rule, fault.Rule);
        Assert.Equal(EpcField.Serial, fault.Field);
        Assert.True(epc.IsEmpty);
        Assert.True(sgtin.Identity.TryEncode(EpcScheme.Sgtin198, 3, out _, out _));
    }

    [Fact]
    public void A_component_that_the_kind_does_not_have_is_refused()
    {
        Assert.False(EpcIdentity.TryCreate(
            EpcKind.Sscc, "0614141".AsSpan(), "1234567890".AsSpan(), "1".AsSpan(), 0, 0, out _, out EpcFault fault));
        Assert.Equal(EpcRule.ComponentCount, fault.Rule);
    }

    [Fact]
    public void Scheme_and_kind_must_fit_and_the_filter_must_fit_its_bits()
    {
        Assert.True(EpcIdentity.TryParseUri("urn:epc:id:giai:0614141.5678".AsSpan(), out EpcIdentity giai, out _));
        Assert.False(giai.TryEncode(EpcScheme.Grai96, 0, out _, out EpcFault wrongScheme));
        Assert.Equal(EpcRule.SchemeFitsKind, wrongScheme.Rule);
        Assert.False(giai.TryEncode(EpcScheme.Giai96, 8, out _, out EpcFault wrongFilter));
        Assert.Equal(EpcRule.FilterRange, wrongFilter.Rule);
        Assert.False(giai.TryEncode(EpcScheme.Giai96, -1, out _, out wrongFilter));
        Assert.Equal(EpcRule.FilterRange, wrongFilter.Rule);
    }

    // Unknown codes stay usable: they have bits, a raw URI and a place in every dictionary.
    [Theory]
    [InlineData("000000000000000000000000", EpcScheme.Unprogrammed, EpcRule.Programmed)]
    [InlineData("E28011606000020000000000", EpcScheme.Unknown, EpcRule.HeaderAssigned)]
    [InlineData("F73795211411234538566CB0AFC4", EpcScheme.SgtinPlus, EpcRule.SchemeRead)]
    [InlineData("307C00000000000000000000", EpcScheme.Sgtin96, EpcRule.PartitionKnown)]
    [InlineData("3074257BF7194E40000000", EpcScheme.Sgtin96, EpcRule.EnoughBits)]
    public void What_cannot_be_decoded_keeps_its_raw_uri(string hex, EpcScheme scheme, EpcRule rule)
    {
        Epc epc = Epc.Parse(hex);
        Assert.Equal(scheme, epc.Scheme);
        Assert.False(EpcFields.TryDecode(epc, EpcDecoding.Lenient, out EpcFields fields, out EpcFault fault));
        Assert.Equal(default, fields);
        Assert.Equal(rule, fault.Rule);
        Assert.Equal(epc.ToRawUri(), epc.ToTagUri());
        Assert.Equal(epc.ToRawUri(), epc.ToPureIdentityUri());
        Assert.Contains(".x" + hex, epc.ToRawUri(), StringComparison.Ordinal);
    }
}
