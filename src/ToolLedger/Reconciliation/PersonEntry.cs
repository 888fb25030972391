using System;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>An entry of an inventory sheet seen only by what it is about; what it is called is asked for when it is used for nothing.</summary>
internal sealed class PersonEntry
{
    public required object Entry { get; init; }

    public required PersonId By { get; init; }

    public required DateTimeOffset At { get; init; }

    /// <summary>The kit of an entry about a kit; the kit in which a tool was seen.</summary>
    public KitId Kit { get; init; }

    /// <summary>The line, or 0.</summary>
    public int LineNumber { get; init; }

    /// <summary>The tool of an entry about a tool; empty otherwise.</summary>
    public ToolId Tool { get; init; }
}
