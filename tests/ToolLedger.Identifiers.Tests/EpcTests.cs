using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using Xunit;

namespace ToolLedger.Identifiers.Tests;

public sealed class EpcTests
{
    private static readonly ushort[] LastWordWithOneBit = [0x3066, 0x8000];

    [Property(MaxTest = 500)]
    public void Two_words_hold_what_their_bytes_hold(ulong first, ulong second)
    {
        byte[] bytes = [.. BitConverter.GetBytes(first).AsEnumerable().Reverse(), .. BitConverter.GetBytes(second).AsEnumerable().Reverse()];
        for (int bitCount = 0; bitCount <= 128; bitCount++)
        {
            Epc epc = Epc.FromWords(first, second, bitCount);
            Assert.Equal(Epc.FromBytes(bytes, bitCount), epc);
            Assert.True(epc.TryGetWords(out ulong back, out ulong more));
            Assert.Equal(epc, Epc.FromWords(back, more, bitCount));
        }
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(129)]
    public void Two_words_hold_at_most_128_bits(int bitCount) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Epc.FromWords(0, 0, bitCount));

    [Property(MaxTest = 500)]
    public void Bytes_come_back_as_given_with_the_padding_masked(byte[] bytes, byte cut)
    {
        int bitCount = Math.Max(0, (bytes.Length * 8) - (cut % 8));
        Epc epc = Epc.FromBytes(bytes, bitCount);
        var back = new byte[epc.ByteCount];
        Assert.True(epc.TryWriteBytes(back, out int written));
        Assert.Equal(bitCount, epc.BitCount);
        Assert.Equal((bitCount + 7) / 8, written);
        byte[] expected = bytes.Take(written).ToArray();
        if (bitCount % 8 != 0)
        {
            expected[written - 1] &= (byte)(0xFF << (8 - (bitCount % 8)));
        }

        Assert.Equal(expected, back);
    }

    [Property(MaxTest = 500)]
    public void Hex_text_parses_back_to_the_same_value_in_either_case(byte[] bytes)
    {
        Epc epc = Epc.FromBytes(bytes, bytes.Length * 8);
        string text = epc.ToString();
        Assert.Equal(string.Concat(bytes.Select(b => b.ToString("X2", System.Globalization.CultureInfo.InvariantCulture))), text);
        Assert.Equal(epc, Epc.Parse(text));
        Assert.Equal(epc, Epc.Parse(text.ToLowerInvariant()));
        Assert.True(Epc.TryParse(System.Text.Encoding.ASCII.GetBytes(text), out Epc fromUtf8));
        Assert.Equal(epc, fromUtf8);
    }

    [Property(MaxTest = 500)]
    public void Words_come_back_as_given(ushort[] words)
    {
        Epc epc = Epc.FromWords(words);
        var back = new ushort[words.Length];
        Assert.True(epc.TryWriteWords(back, out int written));
        Assert.Equal(words.Length, written);
        Assert.Equal(words, back);
    }

    [Property(MaxTest = 500)]
    public void The_order_is_that_of_the_bits_and_then_of_the_length(byte[] left, byte[] right)
    {
        Epc a = Epc.FromBytes(left, left.Length * 8);
        Epc b = Epc.FromBytes(right, right.Length * 8);
        int expected = string.CompareOrdinal(a.ToString(), b.ToString());
        Assert.Equal(Math.Sign(expected), Math.Sign(a.CompareTo(b)));
        Assert.Equal(expected < 0, a < b);
        Assert.Equal(expected <= 0, a <= b);
        Assert.Equal(expected > 0, a > b);
        Assert.Equal(expected >= 0, a >= b);
        Assert.Equal(expected == 0, a == b);
        Assert.Equal(expected != 0, a != b);
    }

    [Property(MaxTest = 500)]
    public void Equal_values_have_equal_hashes_and_one_flipped_bit_makes_them_unequal(byte[] bytes, ushort which)
    {
        Epc epc = Epc.FromBytes(bytes, bytes.Length * 8);
        Epc same = Epc.FromBytes(bytes.ToArray(), bytes.Length * 8);
        Assert.Equal(epc, same);
        Assert.Equal(epc.GetHashCode(), same.GetHashCode());
        if (bytes.Length > 0)
        {
            byte[] other = bytes.ToArray();
            other[which % bytes.Length] ^= (byte)(1 << (which >> 8 & 7));
            Assert.NotEqual(epc, Epc.FromBytes(other, bytes.Length * 8));
        }
    }

    // What a reader reports of a 198-bit EPC are the 208 bits of its words.
    [Fact]
    public void Padding_to_whole_words_makes_an_epc_equal_to_what_its_tag_answers()
    {
        const string OnTag = "3666C4409047E159B2C2BF100000000000000000000000000000";
        var bytes = new byte[26];
        Assert.True(Epc.Parse(OnTag).TryWriteBytes(bytes, out _));
        Epc exact = Epc.FromBytes(bytes, 198);
        Assert.NotEqual(Epc.Parse(OnTag), exact);
        Assert.Equal(Epc.Parse(OnTag), exact.ToWholeWords());
        Assert.Equal(exact.ToWholeWords(), exact.ToWholeWords().ToWholeWords());
    }

    [Fact]
    public void The_default_value_is_empty_and_equal_to_no_bits()
    {
        Assert.True(default(Epc).IsEmpty);
        Assert.Equal(default, Epc.FromBytes([], 0));
        Assert.Equal(string.Empty, default(Epc).ToString());
        Assert.Equal(default, Epc.Parse(string.Empty));
        Assert.Equal("urn:epc:raw:0.x", default(Epc).ToTagUri());
        Assert.Equal(EpcScheme.Unknown, default(Epc).Scheme);
    }

    [Fact]
    public void Bits_behind_the_bit_count_never_take_part()
    {
        Assert.Equal(Epc.FromBytes([0xFF, 0x80], 9), Epc.FromBytes([0xFF, 0xFF], 9));
        Assert.NotEqual(Epc.FromBytes([0xFF, 0x80], 9), Epc.FromBytes([0xFF, 0x80], 10));
        Assert.Equal(Epc.FromWords(LastWordWithOneBit), Epc.Parse("30668000"));
    }

    [Fact]
    public void The_longest_value_is_65535_bits()
    {
        var bytes = new byte[8192];
        bytes[8191] = 0xFF;
        Epc epc = Epc.FromBytes(bytes, Epc.MaxBitCount);
        Assert.Equal(65535, epc.BitCount);
        Assert.Equal(epc, epc.ToWholeWords());
        Assert.Equal(16384, epc.ToString().Length);
        Assert.Equal('E', epc.ToString()[16383]);
        Assert.False(Epc.TryFromBytes(bytes, 65536, out _));
        Assert.False(Epc.TryParse(new string('0', 16384).AsSpan(), out _));
        Assert.Throws<ArgumentException>(() => Epc.FromWords(new ushort[4096]));
        Assert.Equal(65520, Epc.FromWords(new ushort[4095]).BitCount);
    }

    [Theory]
    [InlineData("letter outside", "3074257BF7194E40000G1A85")]
    [InlineData("space", "3074257BF7194E400000 A85")]
    [InlineData("sign", "-074257BF7194E4000001A85")]
    [InlineData("prefix", "0x3074257BF7194E40000001")]
    [InlineData("beyond ASCII", "3074257BF7194E40000\u01301A85")]
    [InlineData("in a short text", "30G")]
    [InlineData("in a tail", "3074257BF7194E4000001A853074257BF7194E4000001A85G")]
    public void TryParse_refuses_and_Parse_names_the_position(string why, string text)
    {
        Assert.False(Epc.TryParse(text.AsSpan(), out Epc epc), why);
        Assert.True(epc.IsEmpty);
        FormatException refusal = Assert.Throws<FormatException>(() => Epc.Parse(text));
        int position = text.IndexOf(text.First(c => !Uri.IsHexDigit(c)));
        Assert.Contains("position " + position.ToString(System.Globalization.CultureInfo.InvariantCulture), refusal.Message, StringComparison.Ordinal);
    }

    // Runs over every character at every place of the two lengths that readers report most.
    [Fact]
    public void Every_character_is_judged_alike_at_every_place()
    {
        foreach (int length in new[] { 24, 16, 32, 52 })
        {
            for (int place = 0; place < length; place++)
            {
                for (int character = 0; character < 256; character++)
                {
                    char[] text = new string('7', length).ToCharArray();
                    text[place] = (char)character;
                    bool digit = character < 128 && Uri.IsHexDigit((char)character);
                    byte[] utf8 = text.Select(c => (byte)c).ToArray();
                    Assert.Equal(digit, Epc.TryParse(text, out Epc fromChars));
                    Assert.Equal(digit, Epc.TryParse(utf8, out Epc fromBytes));
                    Assert.Equal(fromChars, fromBytes);
                    if (digit)
                    {
                        Assert.Equal(new string(text).ToUpperInvariant(), fromChars.ToString());
                    }
                }
            }
        }
    }

    [Fact]
    public void Too_small_a_destination_is_left_alone()
    {
        Epc epc = Epc.Parse("3066C4409047E140075BCD15");
        Assert.False(epc.TryWriteBytes(new byte[11], out int bytes));
        Assert.False(epc.TryWriteWords(new ushort[5], out int words));
        Assert.False(epc.TryFormatHex(new char[23], out int chars));
        Assert.False(epc.TryFormatHex(new byte[23], out int utf8));
        Assert.False(epc.TryFormatTagUri(new char[10], out int uriChars));
        Assert.False(epc.TryFormatTagUri(new byte[10], out int uriBytes));
        Assert.Equal(0, bytes + words + chars + utf8 + uriChars + uriBytes);
    }

    [Fact]
    public void Formats_are_named_and_others_refused()
    {
        Epc epc = Epc.Parse("3066C4409047E140075BCD15");
        Assert.Equal("3066c4409047e140075bcd15", epc.ToString("x"));
        Assert.Equal("urn:epc:tag:sgtin-96:3.95060001343.05.123456789", epc.ToString("T"));
        Assert.Equal("urn:epc:id:sgtin:95060001343.05.123456789", epc.ToString("I"));
        Assert.Equal("urn:epc:raw:96.x3066C4409047E140075BCD15", epc.ToString("R"));
        Assert.Throws<FormatException>(() => epc.ToString("Q"));
        Assert.Equal("3066C4409047E140075BCD15", ((IFormattable)epc).ToString(null, null));
    }

    // A dictionary of a million consecutive tags must not degenerate.
    [Fact]
    public void Hashes_of_consecutive_serial_numbers_spread()
    {
        var hashes = new HashSet<int>();
        var bytes = new byte[12];
        Assert.True(Epc.Parse("3414257BF400000000000000").TryWriteBytes(bytes, out _));
        for (int i = 0; i < 100_000; i++)
        {
            (bytes[9], bytes[10], bytes[11]) = ((byte)(i >> 16), (byte)(i >> 8), (byte)i);
            hashes.Add(Epc.FromBytes(bytes, 96).GetHashCode());
        }

        Assert.True(hashes.Count > 99_900, "only " + hashes.Count.ToString(System.Globalization.CultureInfo.InvariantCulture) + " different hashes");
    }

    [Fact]
    public void Hashes_depend_on_every_part_of_a_long_value()
    {
        var bytes = new byte[26];
        var hashes = new HashSet<int>();
        for (int bit = 0; bit < 208; bit++)
        {
            bytes[bit / 8] ^= (byte)(0x80 >> (bit % 8));
            hashes.Add(Epc.FromBytes(bytes, 208).GetHashCode());
            bytes[bit / 8] ^= (byte)(0x80 >> (bit % 8));
        }

        Assert.Equal(208, hashes.Count);
    }
}
