using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FsCheck.Xunit;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using Xunit;

namespace ToolLedger.Tests.Kits;

public sealed class KitManifestJsonTests
{
    [Property(Arbitrary = [typeof(AnyManifest)])]
    public bool A_manifest_comes_back_from_its_JSON_with_the_same_bytes_and_digest(KitManifest manifest)
    {
        byte[] json = manifest.ToJson();
        KitManifest back = KitManifest.Parse(json);
        return json.AsSpan().SequenceEqual(back.ToJson()) && back.Digest == manifest.Digest
            && back.EffectiveFrom.EqualsExact(manifest.EffectiveFrom) && back.SignedBy.Equals(manifest.SignedBy)
            && back.Lines.Zip(manifest.Lines).All(pair => string.Equals(pair.First.ToString(), pair.Second.ToString(), StringComparison.Ordinal));
    }

    [Property(Arbitrary = [typeof(AnyManifest)])]
    public bool Member_order_and_white_space_change_neither_content_nor_digest(KitManifest manifest, int seed)
    {
        JsonNode shuffled = Shuffle(JsonNode.Parse(manifest.ToJson())!, new Random(seed));
        byte[] json = Encoding.UTF8.GetBytes(shuffled.ToJsonString());
        return KitManifest.Parse(json).Digest == manifest.Digest
            && CanonicalJson.Canonicalize(json).AsSpan().SequenceEqual(CanonicalJson.Canonicalize(manifest.ToJson()));
    }

    [Property(Arbitrary = [typeof(AnyManifest)])]
    public bool The_digest_is_the_SHA_256_of_the_canonical_form(KitManifest manifest) =>
        manifest.Digest == Digest.Of(CanonicalJson.Canonicalize(manifest.ToJson()));

    [Property]
    public bool Random_bytes_are_refused_with_an_issue_and_never_throw(byte[] bytes) =>
        !KitManifest.TryParse(bytes, out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues) && manifest is null && issues.Count > 0;

    [Property(Arbitrary = [typeof(AnyManifest)], MaxTest = 300)]
    public bool Changed_JSON_is_accepted_or_refused_with_an_issue_and_never_throws(KitManifest manifest, int seed)
    {
        byte[] json = Mutate(manifest.ToJson(), new Random(seed));
        bool accepted = KitManifest.TryParse(json, out KitManifest? read, out IReadOnlyList<RecordIssue> issues);
        return accepted == (read is not null) && accepted == (issues.Count == 0)
            && issues.All(issue => !issue.ToString().Any(char.IsControl));
    }

    [Property(Arbitrary = [typeof(AnyManifest)])]
    public bool Truncated_JSON_is_refused(KitManifest manifest, int seed)
    {
        byte[] json = manifest.ToJson();
        int length = new Random(seed).Next(json.Length - 1);
        return !KitManifest.TryParse(json.AsSpan(0, length), out _, out IReadOnlyList<RecordIssue> issues) && issues.Count == 1;
    }

    /// <summary>Moment 1 of the trade: a tool with no piece count is refused, unless the caller says what its absence means.</summary>
    [Fact]
    public void A_tool_whose_pieces_are_not_stated_is_refused_unless_the_caller_declares_a_default()
    {
        byte[] silent = Encoding.UTF8.GetBytes(Regex.Replace(Encoding.UTF8.GetString(RepositoryExample()), ",\\s*\"pieces\": 1\\b", "", RegexOptions.None, TimeSpan.FromSeconds(10)));
        Assert.False(KitManifest.TryParse(silent, out _, out IReadOnlyList<RecordIssue> issues));
        Assert.All(issues, static issue => Assert.Equal(ManifestRules.NoPieceCount.Code, issue.Rule));
        Assert.NotEmpty(issues);

        KitManifest read = KitManifest.Parse(silent, new ManifestReading { PiecesNotStatedMeansOne = true });
        Assert.Equal(KitManifest.Parse(RepositoryExample()).Digest, read.Digest);
        Assert.Equal(read.Digest, KitManifest.Parse(read.ToJson()).Digest);
    }

    [Fact]
    public void The_stored_form_is_readable_and_stays_as_it_is()
    {
        KitManifest manifest = KitManifest.Parse(RepositoryExample());
        Assert.Equal(Encoding.UTF8.GetString(RepositoryExample()), Encoding.UTF8.GetString(manifest.ToJson()));

        // Pinned, computed by another implementation: the digest of a signed manifest must never change between versions.
        Assert.Equal("sha256:d160dc5878f9e1782758572d2e4933bc73c197b03fdc13286e1b0ddff684f6eb", manifest.Digest.ToString());
        Assert.Equal(15, manifest.Lines.Count);
        Assert.Equal("10 each", manifest.FindLine(13)!.Expected.ToString());
        Assert.Equal(3, manifest.FindLine(10)!.Tool!.PieceCount);
        Assert.True(manifest.FindLine(4)!.Tool!.NeedsCalibration);
        Assert.IsType<ConsumableLine>(manifest.FindLine(14));
        Assert.IsType<CountedLine>(manifest.FindLine(15));
    }

    private static byte[] RepositoryExample() => Records.RepositoryFiles.Read("tests", "ToolLedger.Tests", "Kits", "Data", "kit-manifest.json");

    private static JsonNode Shuffle(JsonNode node, Random random)
    {
        if (node is JsonArray array)
        {
            return new JsonArray([.. array.Select(item => Shuffle(item!, random))]);
        }

        if (node is not JsonObject members)
        {
            return node.DeepClone();
        }

        KeyValuePair<string, JsonNode?>[] pairs = [.. members.Select(pair => KeyValuePair.Create(pair.Key, (JsonNode?)Shuffle(pair.Value!, random)))];
        random.Shuffle(pairs);
        return new JsonObject(pairs);
    }

    private static byte[] Mutate(byte[] json, Random random)
    {
        var bytes = new List<byte>(json);
        for (int i = random.Next(1, 4); i > 0; i--)
        {
            int at = random.Next(bytes.Count);
            switch (random.Next(4))
            {
                case 0:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 1:
                    bytes.RemoveAt(at);
                    break;
                case 2:
                    bytes.Insert(at, (byte)"{}[],:\"\\0-e\u0000"[random.Next(12)]);
                    break;
                default:
                    // A piece of the file a second time: duplicates, shifted nesting.
                    bytes.InsertRange(at, bytes.GetRange(at, Math.Min(random.Next(1, 60), bytes.Count - at)));
                    break;
            }
        }

        return [.. bytes];
    }
}
