using System;
using System.Text;
using FsCheck.Xunit;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Records;

public sealed class DigestTests
{
    // FIPS 180-4, example of a one-block message: SHA-256 of "abc".
    private const string Abc = "sha256:ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    [Property]
    public bool A_digest_comes_back_from_its_text_and_its_bytes(byte[] content)
    {
        Digest digest = Digest.Of(content);
        byte[] hash = new byte[32];
        return digest.TryWriteBytes(hash) && Digest.FromHash(hash) == digest
            && Digest.Parse(digest.ToString()) == digest && !digest.IsEmpty;
    }

    [Property]
    public bool Any_text_is_read_or_refused_and_never_throws(string text) =>
        !Digest.TryParse(text, out Digest digest) || string.Equals(digest.ToString(), text, StringComparison.Ordinal);

    [Fact]
    public void The_digest_of_abc_is_the_published_one()
    {
        Digest digest = Digest.Of(Encoding.ASCII.GetBytes("abc"));
        Assert.Equal(Abc, digest.ToString());
        Assert.Equal("ba7816bf8f01", digest.ToShortString());
    }

    [Theory]
    [InlineData("empty", "")]
    [InlineData("no algorithm", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData("other algorithm", "sha512:ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData("one digit short", "sha256:ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015a")]
    [InlineData("one digit long", "sha256:ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015add")]
    [InlineData("upper case", "sha256:BA7816BF8F01CFEA414140DE5DAE2223B00361A396177A9CB410FF61F20015AD")]
    [InlineData("no digit", "sha256:xa7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    public void Text_of_another_form_is_refused(string why, string text)
    {
        Assert.False(Digest.TryParse(text, out Digest digest), why);
        Assert.True(digest.IsEmpty);
        Assert.Throws<FormatException>(() => Digest.Parse(text));
    }

    [Fact]
    public void A_hash_has_32_bytes()
    {
        Assert.Throws<ArgumentException>(() => Digest.FromHash(new byte[31]));
        Assert.False(Digest.Of([]).TryWriteBytes(new byte[31]));
        Assert.True(default(Digest).IsEmpty);
    }
}
