using System;
using ToolLedger.Identifiers.Gen2;
using Xunit;

namespace ToolLedger.Identifiers.Tests.Gen2;

/// <summary>EPC memory of GS1 TDS 2.3, chapters 9, 12 and 15.</summary>
public sealed class EpcMemoryTests
{
    // TDS 2.3, Annex E.1: length 00110, no indicator set.
    [Fact]
    public void The_published_example_reads_and_writes()
    {
        Assert.True(EpcMemory.TryParseAnswer("30003066C4409047E14000001A85".AsSpan(), out EpcMemory memory, out EpcFault fault), fault.ToString());
        Assert.Equal(6, memory.Control.LengthInWords);
        Assert.False(memory.Control.UserMemory || memory.Control.HasXpc || memory.Control.Toggle);
        Assert.Equal(0, memory.Control.LowByte);
        Assert.Equal("urn:epc:tag:sgtin-96:3.95060001343.05.6789", memory.ToTagUri());
        Assert.True(EpcMemory.TryFor(Epc.Parse("3066C4409047E14000001A85"), out EpcMemory written));
        Assert.Equal(memory, written);
    }

    [Theory]
    [InlineData("urn:epc:tag:sgtin-198:3.95060001343.05.32a%2Fb", 0x6800)]
    [InlineData("urn:epc:tag:grai-170:3.0614141.12345.A1", 0x5800)]
    [InlineData("urn:epc:tag:itip-110:3.4012345.012345.01.02.987", 0x3800)]
    [InlineData("urn:epc:tag:giai-96:0.0614141.5678", 0x3000)]
    public void The_length_counts_whole_words(string uri, int word)
    {
        Assert.True(EpcMemory.TryFor(EpcFields.ParseTagUri(uri.AsSpan()).ToEpc(), out EpcMemory memory));
        Assert.Equal(word, memory.Control.Word);
        Assert.Equal(uri, memory.ToTagUri());
    }

    [Theory]
    [InlineData("urn:epc:tag:[att=x01]sgtin-96:3.0614141.812345.6789", 0x3001)]
    [InlineData("urn:epc:tag:[umi=1]sgtin-96:3.0614141.812345.6789", 0x3400)]
    [InlineData("urn:epc:tag:[att=xFF][umi=1][xpc=x0006]sgtin-96:3.0614141.812345.6789", 0x36FF)]
    [InlineData("urn:epc:tag:[xpc=x80010203]sgtin-96:3.0614141.812345.6789", 0x3200)]
    [InlineData("urn:epc:raw:96.xE28011606000020000000000", 0x3000)]
    [InlineData("urn:epc:raw:32.xA1.x0123ABCD", 0x11A1)]
    [InlineData("urn:epc:raw:0.x", 0x0000)]
    public void Uris_with_control_fields_come_back_as_read(string uri, int word)
    {
        Assert.True(EpcMemory.TryParseUri(uri.AsSpan(), out EpcMemory memory, out EpcFault fault), fault.ToString());
        Assert.Equal(word, memory.Control.Word);
        Assert.Equal(uri, memory.ToTagUri());
        var words = new ushort[40];
        Assert.True(memory.TryWriteAnswer(words, out int count));
        Assert.True(EpcMemory.TryFromAnswer(words.AsSpan(0, count), out EpcMemory back, out fault), fault.ToString());
        Assert.Equal(memory, back);
        Assert.Equal(memory.GetHashCode(), back.GetHashCode());
    }

    // Section 15.2.4 names the field differently from Table 12-1: both are read, the table's form is written.
    [Fact]
    public void Both_names_of_the_xpc_field_are_read()
    {
        Assert.True(EpcMemory.TryParseUri("urn:epc:tag:[xpc-w1=x0006]giai-96:0.0614141.1".AsSpan(), out EpcMemory memory, out _));
        Assert.Equal("urn:epc:tag:[xpc=x0006]giai-96:0.0614141.1", memory.ToTagUri());
        Assert.True(memory.Extended.Killable && memory.Extended.NonRemovable);
        Assert.False(memory.Extended.Hazardous || memory.Extended.BatteryAssisted);
    }

    [Theory]
    [InlineData("urn:epc:tag:[umi=1][att=x01]giai-96:0.0614141.1", EpcRule.ControlField)]
    [InlineData("urn:epc:tag:[umi=1][umi=1]giai-96:0.0614141.1", EpcRule.ControlField)]
    [InlineData("urn:epc:tag:[att=x1]giai-96:0.0614141.1", EpcRule.ControlField)]
    [InlineData("urn:epc:tag:[foo=1]giai-96:0.0614141.1", EpcRule.ControlField)]
    [InlineData("urn:epc:tag:[umi=1giai-96:0.0614141.1", EpcRule.ControlField)]
    [InlineData("urn:epc:tag:[xpc=x8001]giai-96:0.0614141.1", EpcRule.ControlField)]
    [InlineData("urn:epc:raw:96.x00", EpcRule.DigitCount)]
    [InlineData("urn:epc:raw:16.x00G0", EpcRule.HexDigits)]
    [InlineData("urn:epc:raw:512.x", EpcRule.DigitCount)]
    [InlineData("urn:epc:raw:16.xG1.x0000", EpcRule.HexDigits)]
    [InlineData("urn:epc:raw:x00", EpcRule.LengthField)]
    [InlineData("urn:epc:id:giai:0614141.1", EpcRule.UriPrefix)]
    public void Uris_that_break_a_rule_are_refused(string uri, EpcRule rule)
    {
        Assert.False(EpcMemory.TryParseUri(uri.AsSpan(), out EpcMemory memory, out EpcFault fault));
        Assert.Equal(rule, fault.Rule);
        Assert.Equal(default, memory);
    }

    [Theory]
    [InlineData("urn:epc:raw:16.258", "0102", EpcRule.None)]
    [InlineData("urn:epc:raw:96.14975789366612459045410314885", "3063545D77A6F00B6000C285", EpcRule.None)]
    [InlineData("urn:epc:raw:12.4095", "FFF", EpcRule.None)]
    [InlineData("urn:epc:raw:12.4096", "", EpcRule.FitsBits)]
    [InlineData("urn:epc:raw:16.65536", "", EpcRule.FitsBits)]
    [InlineData("urn:epc:raw:16.12A", "", EpcRule.DecimalDigits)]
    [InlineData("urn:epc:raw:16.xA1.x0102", "", EpcRule.ToggleClear)]
    public void The_deprecated_decimal_form_is_read_only(string uri, string hex, EpcRule rule)
    {
        bool valid = Epc.TryParseRawUri(uri.AsSpan(), out Epc epc, out EpcFault fault);
        Assert.Equal(rule == EpcRule.None, valid);
        Assert.Equal(rule, fault.Rule);
        Assert.True(!valid || string.Equals(hex, epc.ToString(), StringComparison.Ordinal) || hex.Length == 24);
        if (valid)
        {
            // The same number, computed by another route.
            var number = System.Numerics.BigInteger.Parse(uri.Split('.')[1], System.Globalization.CultureInfo.InvariantCulture);
            var bits = System.Numerics.BigInteger.Parse("0" + epc, System.Globalization.NumberStyles.HexNumber, System.Globalization.CultureInfo.InvariantCulture);
            Assert.Equal(number, bits >> ((4 - (epc.BitCount % 4)) % 4));
        }
    }

    // With the toggle set the memory holds another family's identifier; it keeps its AFI and its bits.
    [Fact]
    public void A_toggled_memory_is_never_decoded_as_an_epc()
    {
        Assert.True(EpcMemory.TryParseAnswer("31A13074257BF7194E4000001A85".AsSpan(), out EpcMemory memory, out _));
        Assert.Equal(0xA1, memory.Afi);
        Assert.False(memory.TryDecode(EpcDecoding.Lenient, out _, out EpcFault fault));
        Assert.Equal(EpcRule.ToggleClear, fault.Rule);
        Assert.Equal("urn:epc:raw:96.xA1.x3074257BF7194E4000001A85", memory.ToTagUri());
    }

    [Fact]
    public void A_length_field_larger_than_the_scheme_needs_is_ignored_unless_strict()
    {
        Assert.True(EpcMemory.TryParseAnswer("40003074257BF7194E4000001A85FFFF0000".AsSpan(), out EpcMemory memory, out _));
        Assert.Equal("urn:epc:tag:sgtin-96:3.0614141.812345.6789", memory.ToTagUri());
        Assert.False(memory.TryDecode(EpcDecoding.Strict, out _, out EpcFault fault));
        Assert.Equal(EpcRule.PaddingZero, fault.Rule);
        Assert.Equal(96, fault.Position);
    }

    [Fact]
    public void A_length_field_smaller_than_the_scheme_needs_leaves_the_raw_uri()
    {
        Assert.True(EpcMemory.TryParseAnswer("28003074257BF7194E4000001A85".AsSpan(), out EpcMemory memory, out _));
        Assert.Equal("urn:epc:raw:80.x3074257BF7194E400000", memory.ToTagUri());
    }

    [Theory]
    [InlineData("", EpcRule.EnoughBits)]
    [InlineData("3000", EpcRule.LengthField)]
    [InlineData("30003074", EpcRule.LengthField)]
    [InlineData("3200", EpcRule.EnoughBits)]
    [InlineData("02008000", EpcRule.EnoughBits)]
    [InlineData("300", EpcRule.LengthField)]
    [InlineData("30G0", EpcRule.HexDigits)]
    public void Answers_that_are_cut_short_are_refused(string hex, EpcRule rule)
    {
        Assert.False(EpcMemory.TryParseAnswer(hex.AsSpan(), out _, out EpcFault fault));
        Assert.Equal(rule, fault.Rule);
    }

    [Fact]
    public void Every_flag_of_the_extended_word_has_its_own_bit()
    {
        ushort Word(Func<ExtendedProtocolControl, bool> flag)
        {
            ushort word = 0;
            for (int bit = 0; bit < 16; bit++)
            {
                word |= flag(new ExtendedProtocolControl((ushort)(1 << bit))) ? (ushort)(1 << bit) : (ushort)0;
            }

            return word;
        }

        Assert.Equal(0x8000, Word(x => x.HasSecondWord));
        Assert.Equal(0x0800, Word(x => x.SensorAlarm));
        Assert.Equal(0x0400, Word(x => x.SimpleSensor));
        Assert.Equal(0x0200, Word(x => x.FullFunctionSensor));
        Assert.Equal(0x0100, Word(x => x.SnapshotSensor));
        Assert.Equal(0x0080, Word(x => x.BatteryAssisted));
        Assert.Equal(0x0040, Word(x => x.ResponseReady));
        Assert.Equal(0x0020, Word(x => x.Selected));
        Assert.Equal(0x0010, Word(x => x.Notification));
        Assert.Equal(0x0008, Word(x => x.Untraceable));
        Assert.Equal(0x0004, Word(x => x.Killable));
        Assert.Equal(0x0002, Word(x => x.NonRemovable));
        Assert.Equal(0x0001, Word(x => x.Hazardous));
    }
}
