using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using System.Text.Json.Nodes;
using ToolLedger.Ledger;
using ToolLedger.Records;
using ToolLedger.Tests.Custody;
using Xunit;
using static ToolLedger.Tests.Ledger.LedgerScene;

namespace ToolLedger.Tests.Ledger;

/// <summary>A line of a ledger with any of its values exchanged for something hostile is either read or refused with a reason, and what was read is written the same again.</summary>
public sealed class LedgerEntryNodeTests
{
    private static readonly string[] Hostile =
    [
        "null", "true", "0", "-1", "1e400", "1e-400", "99999999999999999999", "0.1", "\"\"", "\" \"", "\"x\"", "\"\\u0000\"", "\"\\ud800\"", "\"\\u202e\"", "[]", "{}", "[null]", "[[]]", "[{}]", "[{},{}]",
        "{\"x\":1}", "\"0001-01-01T00:00:00Z\"", "\"9999-12-31T23:59:60Z\"", "\"2026-03-02T08:00:00+14:00\"", "\"" + new string('a', 70_000) + "\"",
        new string('[', 200) + new string(']', 200),
    ];

    [Fact]
    public void Any_value_exchanged_is_read_or_refused_with_a_reason()
    {
        foreach (RecordEntry content in CustodyLogJsonTests.OneOfEach().Concat<RecordEntry>(OneOfEach()))
        {
            string json = Encoding.UTF8.GetString(Entry(content, content.At.AddMinutes(1)).ToJson());
            int count = Places(JsonNode.Parse(json)!).Count;

            // A result holds thousands of values; a share of them that no kind of value escapes.
            for (int place = 0; place < count; place += 1 + (count / 40))
            {
                foreach (string value in Hostile)
                {
                    JsonNode root = JsonNode.Parse(json)!;
                    string path = Places(root)[place].GetPath();
                    const string Mark = "\"exchanged here\"";
                    Places(root)[place].ReplaceWith(JsonValue.Create("exchanged here"));
                    AssertReadOrRefused(root.ToJsonString().Replace(Mark, value, StringComparison.Ordinal), $"{content.Kind} {path} {value[..Math.Min(40, value.Length)]}");
                }
            }
        }
    }

    private static void AssertReadOrRefused(string json, string what)
    {
        bool isRead = LedgerEntry.TryParse(Encoding.UTF8.GetBytes(json), out LedgerEntry? entry, out IReadOnlyList<RecordIssue> issues);
        Assert.True(isRead ? entry is not null && issues.Count == 0 : entry is null && issues.Count > 0, what);
        if (isRead)
        {
            Assert.Equal(entry!.ToJson(), LedgerEntry.Parse(entry.ToJson()).ToJson());
        }
    }

    private static List<JsonNode> Places(JsonNode root)
    {
        var found = new List<JsonNode>();
        var open = new Queue<JsonNode>([root]);
        while (open.TryDequeue(out JsonNode? node))
        {
            IEnumerable<JsonNode?> inner = node switch
            {
                JsonObject members => members.Select(static member => member.Value),
                JsonArray items => items,
                _ => [],
            };
            foreach (JsonNode one in inner.OfType<JsonNode>())
            {
                found.Add(one);
                open.Enqueue(one);
            }
        }

        return found;
    }
}
