using System;
using ToolLedger.Identifiers.Gen2;
using Xunit;

namespace ToolLedger.Identifiers.Tests.Gen2;

/// <summary>TID memory of GS1 TDS 2.3, chapter 16.</summary>
public sealed class TidFieldsTests
{
    [Fact]
    public void Class_E2_with_an_extended_tid_has_designer_model_and_serial_number()
    {
        // X = 1, S = 1, F = 0, designer 001h, model 160h, header 2000h: a serial number of 48 bits.
        Assert.True(TidFields.TryDecode(Tid.Parse("E2C01160" + "2000" + "0123456789AB"), out TidFields fields, out EpcFault fault), fault.ToString());
        Assert.Equal(TidClass.Gs1, fields.Class);
        Assert.True(fields.HasXtid);
        Assert.True(fields.SupportsSecurity);
        Assert.False(fields.SupportsFiles);
        Assert.Equal(1, fields.MaskDesigner);
        Assert.Equal(0x160, fields.Model);
        Assert.Equal(Epc.Parse("0123456789AB"), fields.Serial);
        Assert.True(fields.TryGetStidUri(out string uri));
        Assert.Equal("urn:epc:stid:xC01.x160.x0123456789AB", uri);
        Assert.True(TidFields.TryParseStidUri(uri.AsSpan(), out TidFields back, out fault), fault.ToString());
        Assert.Equal(fields, back);
    }

    [Theory]
    [InlineData(1, 48)]
    [InlineData(2, 64)]
    [InlineData(7, 144)]
    public void The_size_in_the_header_gives_the_bits_of_the_serial_number(int size, int bits)
    {
        string tid = "E2801160" + (size << 13 | 0x1E00).ToString("X4", System.Globalization.CultureInfo.InvariantCulture) + new string('7', bits / 4);
        Assert.True(TidFields.TryDecode(Tid.Parse(tid), out TidFields fields, out _));
        Assert.Equal(bits, fields.Serial.BitCount);
        Assert.True(fields.HasOptionalCommandSegment && fields.HasBlockWriteSegment && fields.HasUserMemorySegment && fields.HasLockSegment);
        Assert.False(TidFields.TryDecode(Tid.Parse(tid.Substring(0, tid.Length - 1)), out _, out EpcFault fault));
        Assert.Equal(EpcRule.EnoughBits, fault.Rule);
    }

    [Fact]
    public void Without_an_extended_tid_there_is_no_serial_number_and_no_uri()
    {
        Assert.True(TidFields.TryDecode(Tid.Parse("E2001160"), out TidFields fields, out _));
        Assert.False(fields.HasXtid);
        Assert.True(fields.Serial.IsEmpty);
        Assert.False(fields.TryGetStidUri(out string uri));
        Assert.Empty(uri);
    }

    [Fact]
    public void Class_E0_has_a_makers_code_and_a_serial_number()
    {
        Assert.True(TidFields.TryDecode(Tid.Parse("E004010012345678"), out TidFields fields, out _));
        Assert.Equal(TidClass.Iso7816, fields.Class);
        Assert.Equal(4, fields.MaskDesigner);
        Assert.Equal(Epc.Parse("010012345678"), fields.Serial);
        Assert.False(fields.TryGetStidUri(out _));
    }

    [Theory]
    [InlineData("", EpcRule.HeaderAssigned)]
    [InlineData("30000000", EpcRule.HeaderAssigned)]
    [InlineData("E2", EpcRule.EnoughBits)]
    [InlineData("E280116", EpcRule.EnoughBits)]
    [InlineData("E2801160", EpcRule.EnoughBits)]
    [InlineData("E00401001234567", EpcRule.EnoughBits)]
    public void Other_bits_are_refused_with_the_rule(string hex, EpcRule rule)
    {
        Assert.False(TidFields.TryDecode(Tid.Parse(hex), out TidFields fields, out EpcFault fault));
        Assert.Equal(rule, fault.Rule);
        Assert.Equal(default, fields);
    }

    [Theory]
    [InlineData("urn:epc:stid:x801.x160.x0123456789A")]
    [InlineData("urn:epc:stid:x801.x160.0123456789AB")]
    [InlineData("urn:epc:stid:x001.x160.x0123456789AB")]
    [InlineData("urn:epc:stid:x80G.x160.x0123456789AB")]
    [InlineData("urn:epc:id:x801.x160.x0123456789AB")]
    [InlineData("urn:epc:stid:x")]
    [InlineData("")]
    public void Uris_that_are_no_stid_are_refused(string uri) =>
        Assert.False(TidFields.TryParseStidUri(uri.AsSpan(), out _, out _));

    [Fact]
    public void A_tid_holds_up_to_2048_bits()
    {
        Assert.Equal(2048, Tid.Parse(new string('A', 512)).BitCount);
        Assert.False(Tid.TryParse(new string('A', 513).AsSpan(), out _));
        Assert.Throws<FormatException>(() => Tid.Parse(new string('A', 513)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Tid.FromBytes(new byte[300], 2049));
        Assert.True(default(Tid).IsEmpty);
        Assert.Equal(default, Tid.FromBytes([], 0));
        Assert.True(Tid.Parse("E2801160") == Tid.Parse("e2801160"));
        Assert.True(Tid.Parse("E2801160") != Tid.Parse("E2801161"));
    }
}
