using System;
using System.Text.Json;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Custody;

/// <summary>A receipt for one tool, signed by whoever received it: while it is open the tool is accounted for by this record, and its exposure runs at the receiver.</summary>
/// <remarks>Custody passes when the receiver signs; a receipt without that signature is refused. It stays open until a person closes it. Immutable and thread-safe.</remarks>
public abstract class ToolReceipt : CustodyEntry
{
    private protected ToolReceipt()
    {
    }

    /// <summary>The tool.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required ToolId Tool { get; init => field = Given(value, value.IsEmpty, "A receipt needs its tool."); }

    /// <summary>The kit it comes out of; empty (the default) if it belongs to none.</summary>
    public KitId Kit { get; init; }

    /// <summary>Who received the tool and signs for it; null (the default) if nobody did.</summary>
    public Signature? ReceivedBy { get; init; }

    /// <summary>How many pieces were handed over, 1 to 999; null (the default) if not stated.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public int? Pieces { get; init => field = value is null or (>= 1 and <= CustodyChecks.MaxPieceCount) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "A number of pieces is 1 to 999."); }

    private protected void WriteReceipt(Utf8JsonWriter writer)
    {
        writer.WriteString("tool"u8, Tool.Value);
        writer.WriteIfGiven("kit", Kit.Value);
        writer.WriteSignature("receivedBy", ReceivedBy);
        if (Pieces is { } pieces)
        {
            writer.WriteNumber("pieces"u8, pieces);
        }
    }
}
