using System;
using System.Text;
using FsCheck;
using FsCheck.Xunit;
using ToolLedger.Identifiers;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Tools;

public sealed class TagIdTests
{
    private const string Hex96 = "3034257BF7194E4000001A85";

    [Property(Arbitrary = [typeof(AnyTag)])]
    public bool A_tag_comes_back_from_its_text(TagId tag) =>
        TagId.Parse(tag.ToString()) == tag && TagId.Parse(tag.ToString()).GetHashCode() == tag.GetHashCode();

    [Property(Arbitrary = [typeof(AnyTag)])]
    public bool Order_agrees_with_equality_and_runs_one_way(TagId left, TagId right) =>
        (left.CompareTo(right) == 0) == (left == right)
        && Math.Sign(left.CompareTo(right)) == -Math.Sign(right.CompareTo(left))
        && (left < right) == (right > left) && (left <= right) == !(left > right) && (left >= right) == !(left < right);

    [Property]
    public bool Any_text_is_read_or_refused_and_never_throws(string text)
    {
        bool read = TagId.TryParse(text, out TagId tag);
        return read != tag.IsEmpty;
    }

    [Property]
    public bool Any_bytes_are_read_as_hex_or_refused_alike_by_both_readers(byte[] bytes)
    {
        bool read = TagId.TryParseEpcHex(bytes, out TagId tag);
        return read == (TagId.TryParse(Encoding.Latin1.GetString(bytes), out TagId other) && other.Kind == TagIdKind.Epc && !Encoding.Latin1.GetString(bytes).Contains(':', StringComparison.Ordinal))
            && (!read || tag == other);
    }

    [Fact]
    public void An_EPC_is_kept_as_the_tag_answers_in_whole_words()
    {
        TagId tag = TagId.FromEpc(Epc.FromBytes(Convert.FromHexString("ABCDE0"), 19));
        Assert.Equal("epc:ABCDE000", tag.ToString());
        Assert.Equal(tag, TagId.Parse("ABCDE000"));
        Assert.Equal(32, tag.Epc.BitCount);
    }

    [Fact]
    public void The_same_64_bits_of_two_kinds_are_two_tags()
    {
        var animal = TagId.FromIso11784(0xE004_0100_0000_0001);
        var card = TagId.FromIso15693(0xE004_0100_0000_0001);
        Assert.NotEqual(animal, card);
        Assert.Equal("iso11784:E004010000000001", animal.ToString());
        Assert.Equal("iso15693:E004010000000001", card.ToString());
        Assert.Equal(0xE004_0100_0000_0001UL, card.Number);
        Assert.True(card.Epc.IsEmpty);
        Assert.NotEqual(card, TagId.Parse("E004010000000001"));
    }

    [Fact]
    public void The_default_is_an_empty_EPC()
    {
        Assert.True(default(TagId).IsEmpty);
        Assert.Equal(TagIdKind.Epc, default(TagId).Kind);
        Assert.Equal("epc:", default(TagId).ToString());
        Assert.Equal(default, TagId.FromEpc(default));
    }

    [Theory]
    [InlineData("nothing", "")]
    [InlineData("no digits", "epc:")]
    [InlineData("no hexadecimal digit", "epc:30G4")]
    [InlineData("0x is no digit", "0x3034")]
    [InlineData("white space", " 3034")]
    [InlineData("15 digits", "iso15693:E00401000000000")]
    [InlineData("17 digits", "iso11784:E0040100000000010")]
    [InlineData("sign is no digit", "iso11784:-004010000000001")]
    [InlineData("prefix in upper case", "EPC:3034")]
    [InlineData("empty text", "text:")]
    [InlineData("text with a control", "text:a\u001b")]
    [InlineData("unknown kind", "uid:3034")]
    public void Text_of_another_form_is_refused(string why, string text)
    {
        Assert.False(TagId.TryParse(text, out TagId tag), why);
        Assert.True(tag.IsEmpty);
        Assert.Throws<FormatException>(() => TagId.Parse(text));
    }

    [Fact]
    public void Text_of_65_characters_and_a_megabyte_of_digits_are_refused()
    {
        Assert.True(TagId.TryParse("text:" + new string('a', 64), out _));
        Assert.False(TagId.TryParse("text:" + new string('a', 65), out _));
        Assert.False(TagId.TryParse(new string('A', 1_000_000), out _));
        Assert.False(TagId.TryParseEpcHex(new byte[1_000_000], out _));
    }

    [Fact]
    public void Reading_and_looking_at_a_96_bit_EPC_allocates_nothing()
    {
        byte[] utf8 = Encoding.ASCII.GetBytes(Hex96);
        Assert.True(TagId.TryParseEpcHex(utf8, out TagId first));
        long before = GC.GetAllocatedBytesForCurrentThread();
        bool same = true;
        for (int i = 0; i < 1000; i++)
        {
            same &= TagId.TryParseEpcHex(utf8, out TagId tag) && tag.Equals(first) && tag.GetHashCode() == first.GetHashCode() && tag.CompareTo(first) == 0;
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(same);
    }
}
