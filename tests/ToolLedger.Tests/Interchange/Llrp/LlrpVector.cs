using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using ToolLedger.Tests.Records;

namespace ToolLedger.Tests.Interchange.Llrp;

/// <summary>A whole message with what it says. Sources and licences stand beside the file.</summary>
internal sealed record LlrpVector(string Id, byte[] Bytes, JsonElement Says)
{
    private static readonly JsonElement File = JsonDocument.Parse(
        RepositoryFiles.Read("tests", "ToolLedger.Tests", "Interchange", "Llrp", "Data", "llrp-frames.json")).RootElement;

    /// <summary>Messages of real readers and of the test data of other decoders.</summary>
    public static IReadOnlyList<LlrpVector> Published { get; } = [.. Read("vectors")];

    /// <summary>Hand-made messages with a verdict.</summary>
    public static IReadOnlyList<LlrpVector> Robustness { get; } = [.. Read("robustness")];

    public string Verdict => Says.GetProperty("verdict").GetString()!;

    public JsonElement[] Tags => Says.TryGetProperty("tags", out JsonElement tags) ? [.. tags.EnumerateArray()] : [];

    private static IEnumerable<LlrpVector> Read(string list) => File.GetProperty(list).EnumerateArray()
        .Select(vector => new LlrpVector(vector.GetProperty("id").GetString()!, Convert.FromHexString(vector.GetProperty("hex").GetString()!), vector));
}
