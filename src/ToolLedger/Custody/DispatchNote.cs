using System;
using System.Text.Json;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Custody;

/// <summary>A note that a tool was sent somewhere. It is shown and moves nothing: custody passes when the receiver signs.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class DispatchNote : CustodyEntry
{
    /// <inheritdoc/>
    public override string Kind => CustodyKinds.DispatchNote;

    /// <summary>The tool.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required ToolId Tool { get; init => field = Given(value, value.IsEmpty, "A note needs its tool."); }

    /// <summary>The kit it was taken out of; empty (the default) if not stated.</summary>
    public KitId Kit { get; init; }

    /// <summary>Where it was sent.</summary>
    /// <exception cref="ArgumentException">The id is empty.</exception>
    public required Place To { get; init => field = Given(value, value.IsEmpty, "A note needs the place where the tool was sent."); }

    private protected override void WriteMembers(Utf8JsonWriter writer)
    {
        writer.WriteString("tool"u8, Tool.Value);
        writer.WriteIfGiven("kit", Kit.Value);
        writer.WriteString("to"u8, To.Value);
    }

    internal static DispatchNote? Read(EntryFields fields) => fields.Made(static f => new DispatchNote
    {
        Id = f.Id,
        At = f.At,
        By = f.By,
        Role = f.Role,
        Witness = f.Witness,
        Where = f.Where,
        Remark = f.Remark,
        Tool = new ToolId(f.Text("tool")),
        Kit = f.Optional("kit", static text => new KitId(text)),
        To = new Place(f.Text("to")),
    });
}
