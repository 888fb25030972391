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

    /// <summary>The kit was turned in on a signed inventory that listed the tool, and nothing speaks against it: no custody entry since about the kit, a kit around or inside it, or one of their tools (refused
    /// ones too), no opening, use, breakage or sighting elsewhere, no annotation of the line, and no line that was open when the kit was last signed for.</summary>
    /// <remarks>A value below the policy's own share lowers the bar for such tools; by default it lowers nothing. A value that is not below it holds for every kit that was turned in on a signed inventory, whatever was done since.</remarks>
    /// <value>0.000001 to 0.9, at most 9 decimals. The default is 0.01 (ours), the usual share.</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public decimal Packed { get; init => field = InRange(value, nameof(Packed)); } = 0.01m;

    /// <summary>The tool came back on a receipt, from a loan or a laboratory, and nobody signed for the kit since.</summary>
    /// <value>0.000001 to 0.9, at most 9 decimals. The default is 0.02 (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public decimal Returned { get; init => field = InRange(value, nameof(Returned)); } = 0.02m;

    /// <summary>Its line was open or short when the kit, or one around it, was issued or handed over, as both signed; also after the turn-in, until the kit is issued again without it.</summary>
    /// <value>0.000001 to 0.9, at most 9 decimals. The default is 0.5 (ours).</value>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public decimal OpenAtIssue { get; init => field = InRange(value, nameof(OpenAtIssue)); } = 0.5m;

    /// <summary>It was on an open receipt: somebody else signed for it. Also where a note or a refused receipt says that it went elsewhere, and no receipt took effect and the kit was not issued since.</summary>
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
