using System;
using System.Collections.Generic;
using System.Text.Json;
using System.Text.Json.Nodes;
using ToolLedger.Identifiers;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reads;

/// <summary>The digest is what anybody gets who writes the same evidence as JSON and canonicalizes it.</summary>
public sealed class SessionDigestTests
{
    [Fact]
    public void The_streamed_digest_equals_that_of_the_canonical_json()
    {
        SessionScene scene = new() { OffsetBefore = TimeSpan.FromSeconds(0.5), OffsetAfter = TimeSpan.FromSeconds(0.25), PassStarts = [30] };
        TagId text = TagId.FromText("ring \"7\" \\ \u00e9 \U0001F527");
        scene.Reads.Add(SessionScene.Read(SessionScene.Tool(1), 1, 10.75) with { Strength = new Rssi(-6_150), Tid = Tid.Parse("E2801101") });
        scene.Reads.Add(SessionScene.Read(SessionScene.Tool(1), 1, 10.80) with { Strength = new Rssi(-5_000) });
        scene.Reads.Add(SessionScene.Read(SessionScene.Tool(1), 2, 40.5));
        scene.Reads.Add(SessionScene.Read(text, 2, 41));
        scene.WithLoss(SessionLoss.BufferOverflow);
        ReadSession session = scene.Close();
        const long Second = TimeSpan.TicksPerSecond;
        var evidence = new JsonObject
        {
            ["schema"] = "toolledger/session-evidence/1",
            ["presentation"] = scene.Presentation.Digest.ToString(),
            ["to"] = 60 * Second,
            ["slotLength"] = Second / 2,
            ["clockOffsetAfter"] = Second / 4,
            ["passStarts"] = new JsonArray(0, 30 * Second),
            ["losses"] = new JsonArray(new JsonObject { ["kind"] = "buffer-overflow", ["at"] = 30 * Second, ["antenna"] = 0 }),
            ["tags"] = new JsonArray(
                new JsonObject
                {
                    ["tag"] = SessionScene.Tool(1).ToString(),
                    ["firstSeen"] = (long)(10.25 * Second),
                    ["lastSeen"] = 40 * Second,
                    ["looks"] = new JsonArray(new JsonArray(1, 1, 20), new JsonArray(2, 2, 80)),
                    ["strongest"] = -5_000,
                    ["weakest"] = -6_150,
                    ["tids"] = new JsonArray(false, "E2801101"),
                },
                new JsonObject
                {
                    ["tag"] = text.ToString(),
                    ["firstSeen"] = (long)(40.5 * Second),
                    ["lastSeen"] = (long)(40.5 * Second),
                    ["looks"] = new JsonArray(new JsonArray(2, 2, 81)),
                }),
        };
        Assert.Equal(Digest.Of(CanonicalJson.Canonicalize(JsonSerializer.SerializeToUtf8Bytes(evidence))), session.Digest);
    }

    [Fact]
    public void Every_part_of_the_evidence_is_covered()
    {
        HashSet<Digest> digests =
        [
            new SessionScene().WithControls().Close().Digest,
            new SessionScene { Seconds = 61 }.WithControls().Close().Digest,
            new SessionScene { OffsetAfter = TimeSpan.FromSeconds(0.1) }.WithControls().Close().Digest,
            new SessionScene { PassStarts = [30] }.WithControls().Close().Digest,
            new SessionScene().WithControls().WithLoss(SessionLoss.DecodeError).Close().Digest,
            new SessionScene().WithControls().With(SessionScene.Tool(1), 1, 3).Close().Digest,
            new SessionScene().WithControls().With(SessionScene.Tool(1), 2, 3).Close().Digest,
            new SessionScene().WithControls().With(SessionScene.Tool(1), 1, 3.6).Close().Digest,
        ];
        digests.Add(WithNearby(new NearbyKit(new KitId("K2"), SessionScene.At(1))));
        digests.Add(WithNearby(new NearbyKit(new KitId("K3"), SessionScene.At(1))));
        digests.Add(WithNearby(new NearbyKit(new KitId("K2"), SessionScene.At(2))));
        digests.Add(WithNearby(new NearbyKit(new KitId("K2"), SessionScene.At(1), SessionScene.At(9))));
        Assert.Equal(12, digests.Count);
    }

    [Fact]
    public void Kits_noted_nearby_are_covered_in_order_of_kit_and_start()
    {
        const long Second = TimeSpan.TicksPerSecond;
        NearbyKit k2 = new(new KitId("K2"), SessionScene.At(1), SessionScene.At(9)), k3 = new(new KitId("K3"), SessionScene.At(-60));
        var evidence = new JsonObject
        {
            ["schema"] = "toolledger/session-evidence/1",
            ["presentation"] = new SessionScene().Presentation.Digest.ToString(),
            ["to"] = 60 * Second,
            ["slotLength"] = Second / 2,
            ["clockOffsetAfter"] = 0,
            ["passStarts"] = new JsonArray(0),
            ["losses"] = new JsonArray(),
            ["nearbyKits"] = new JsonArray(new JsonArray("K2", Second, 9 * Second), new JsonArray("K3", -60 * Second)),
            ["tags"] = new JsonArray(),
        };
        Assert.Equal(Digest.Of(CanonicalJson.Canonicalize(JsonSerializer.SerializeToUtf8Bytes(evidence))), WithNearby(k3, k2));
    }

    [Fact]
    public void A_kit_noted_again_with_its_end_is_one_stay()
    {
        var builder = new ReadSessionBuilder(new SessionScene().Presentation, new SessionPolicy());
        builder.NoteNearby(new NearbyKit(new KitId("K2"), SessionScene.At(1)));
        builder.NoteNearby(new NearbyKit(new KitId("K2"), SessionScene.At(1), SessionScene.At(9)));
        Assert.Equal(SessionScene.At(9), Assert.Single(builder.Close(SessionScene.At(60)).NearbyKits).Until);

        builder = new ReadSessionBuilder(new SessionScene().Presentation, new SessionPolicy());
        Assert.Throws<ArgumentException>(() => builder.NoteNearby(new NearbyKit(new KitId("K1"), SessionScene.At(1))));
        Assert.Throws<ArgumentException>(() => builder.NoteNearby(default(NearbyKit) with { From = SessionScene.At(1) }));
        Assert.Throws<ArgumentException>(() => builder.NoteNearby(new NearbyKit(new KitId("K2"), SessionScene.At(1), SessionScene.At(1))));
        Assert.Throws<ArgumentOutOfRangeException>(() => builder.NoteNearby(default));
        builder.Close(SessionScene.At(60));
        Assert.Throws<InvalidOperationException>(() => builder.NoteNearby(new NearbyKit(new KitId("K2"), SessionScene.At(1))));
    }

    private static Digest WithNearby(params NearbyKit[] kits)
    {
        var builder = new ReadSessionBuilder(new SessionScene().Presentation, new SessionPolicy());
        foreach (NearbyKit kit in kits)
        {
            builder.NoteNearby(kit);
        }

        return builder.Close(SessionScene.At(60), TimeSpan.Zero).Digest;
    }
}
