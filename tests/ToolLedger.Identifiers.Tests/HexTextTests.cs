#if NET
using System;
using System.Text;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace ToolLedger.Identifiers.Tests;

/// <summary>Vector paths give the same bits as plain ones, both ways.</summary>
public sealed class HexTextTests
{
    [Property(MaxTest = 2000)]
    public void Reading_with_vectors_and_without_gives_the_same(DoNotSize<ulong> word, byte place, byte character)
    {
        byte[] digits = Encoding.ASCII.GetBytes(word.Item.ToString(place % 2 == 0 ? "X16" : "x16", System.Globalization.CultureInfo.InvariantCulture));
        if (place % 3 == 0)
        {
            digits[place % 16] = character;
        }

        bool plain = HexText.TryReadWordPlain(digits, out ulong fromPlain);
        bool vector = HexText.TryReadVector(System.Runtime.Intrinsics.Vector128.Create<byte>(digits), out ulong fromVector);
        Assert.Equal(plain, vector);
        Assert.True(!plain || fromPlain == fromVector);
        char[] characters = Array.ConvertAll(digits, b => (char)b);
        Assert.Equal(plain, HexText.TryReadWord(characters, out ulong fromCharacters));
        Assert.Equal(plain, HexText.TryReadWordPlain(characters.AsSpan(), out ulong plainCharacters));
        Assert.True(!plain || (fromPlain == fromCharacters && fromPlain == plainCharacters));
    }

    [Property(MaxTest = 2000)]
    public void Writing_with_vectors_and_without_gives_the_same(DoNotSize<ulong> word)
    {
        var plain = new byte[16];
        var vector = new byte[16];
        HexText.WritePlain(word.Item, plain);
        HexText.WriteVector(word.Item, vector);
        Assert.Equal(plain, vector);
        Assert.Equal(word.Item.ToString("X16", System.Globalization.CultureInfo.InvariantCulture), Encoding.ASCII.GetString(plain));
    }

    // A character beyond Latin-1 must not be narrowed to a digit.
    [Theory]
    [InlineData('\u0130')]
    [InlineData('\uFF11')]
    [InlineData('\u4131')]
    [InlineData('\u8030')]
    public void A_wide_character_is_no_digit(char wide)
    {
        for (int place = 0; place < 16; place++)
        {
            char[] digits = "0123456789abcdef".ToCharArray();
            digits[place] = wide;
            Assert.False(HexText.TryReadWord(digits, out _));
        }
    }
}
#endif
