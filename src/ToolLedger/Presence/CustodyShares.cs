using System;
using System.Globalization;
using System.Text.Json;
using ToolLedger.Records;

namespace ToolLedger.Presence;

/// <summary>The probability before the session that a tool is not in its kit, by what custody knew of it when the session began. All defaults are examples of this library, no measurement.</summary>
/// <remarks>Where several apply, the largest is used. Immutable and thread-safe; compared by value.</remarks>
public sealed record CustodyShares
{
    /// <summary>The kit was out with a user who signed for it.</summary>
    /// <value>0.000001 to 0.9, at most 9 decimals. The default is 0.01 (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public decimal Issued { get; init => field = InRange(value, nameof(Issued)); } = 0.01m;

    /// <summary>The kit was turned in on a signed inventory, and nobody noted since that it was opened, taken to a job or signed out.</summary>
    /// <value>0.000001 to 0.9, at most 9 decimals. The default is 0.005 (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public decimal Packed { get; init => field = InRange(value, nameof(Packed)); } = 0.005m;

    /// <summary>The tool came back on a receipt, from a loan or a laboratory, and nobody signed for the kit since.</summary>
    /// <value>0.000001 to 0.9, at most 9 decimals. The default is 0.02 (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public decimal Returned { get; init => field = InRange(value, nameof(Returned)); } = 0.02m;

    /// <summary>Its line was open or short when the kit was issued, as both signed.</summary>
    /// <value>0.000001 to 0.9, at most 9 decimals. The default is 0.5 (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public decimal OpenAtIssue { get; init => field = InRange(value, nameof(OpenAtIssue)); } = 0.5m;

    /// <summary>It was on an open receipt: somebody else signed for it.</summary>
    /// <value>0.000001 to 0.9, at most 9 decimals. The default is 0.5 (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public decimal OnReceipt { get; init => field = InRange(value, nameof(OnReceipt)); } = 0.5m;

    /// <summary>Reads the members; what is absent keeps its default.</summary>
    internal static CustodyShares FromFields(JsonFields fields)
    {
        var fallback = new CustodyShares();
        decimal Share(string name, decimal otherwise) => fields.Decimal(name, otherwise, StatedRiskPolicy.MinAbsentShare, StatedRiskPolicy.MaxAbsentShare);
        var shares = new CustodyShares
        {
            Issued = Share("issued", fallback.Issued),
            Packed = Share("packed", fallback.Packed),
            Returned = Share("returned", fallback.Returned),
            OpenAtIssue = Share("openAtIssue", fallback.OpenAtIssue),
            OnReceipt = Share("onReceipt", fallback.OnReceipt),
        };
        fields.End();
        return shares;
    }

    internal void WriteJson(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteNumber("issued"u8, DetectionModel.Plain(Issued));
        writer.WriteNumber("packed"u8, DetectionModel.Plain(Packed));
        writer.WriteNumber("returned"u8, DetectionModel.Plain(Returned));
        writer.WriteNumber("openAtIssue"u8, DetectionModel.Plain(OpenAtIssue));
        writer.WriteNumber("onReceipt"u8, DetectionModel.Plain(OnReceipt));
        writer.WriteEndObject();
    }

    private static decimal InRange(decimal value, string name) => StatedRiskPolicy.IsAbsentShare(value)
        ? value
        : throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"{name} must be {StatedRiskPolicy.MinAbsentShare} to {StatedRiskPolicy.MaxAbsentShare} with at most 9 decimals."));
}
