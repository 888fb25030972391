namespace ToolLedger.Interchange.Llrp;

/// <summary>One thing that happened at a reader. What the kind does not have is null.</summary>
/// <remarks>Members are named as in LLRP 1.1 (2010), 13.2.6. Changed with <c>with</c>. Immutable and thread-safe.</remarks>
public sealed record LlrpReaderEvent
{
    /// <summary>What happened. The default is unknown.</summary>
    public LlrpEventKind Kind { get; init; }

    /// <summary>When, in microseconds since 1970-01-01T00:00:00Z by the reader's clock; null when it states its uptime.</summary>
    public ulong? UtcMicroseconds { get; init; }

    /// <summary>When, in microseconds since the reader was started; null when it states UTC.</summary>
    public ulong? UptimeMicroseconds { get; init; }

    /// <summary>What about it: see the kind. Of an antenna 0 is disconnected and 1 connected.</summary>
    public byte? EventType { get; init; }

    /// <summary>The antenna, of an antenna event or where a fault occurred.</summary>
    public ushort? AntennaId { get; init; }

    /// <summary>The reader operation.</summary>
    public uint? RoSpecId { get; init; }

    /// <summary>The reader operation that the other gave way to.</summary>
    public uint? PreemptingRoSpecId { get; init; }

    /// <summary>Which part of the reader operation.</summary>
    public ushort? SpecIndex { get; init; }

    /// <summary>Which inventory settings.</summary>
    public ushort? InventoryParameterSpecId { get; init; }

    /// <summary>Which access operation.</summary>
    public uint? AccessSpecId { get; init; }

    /// <summary>Which step of an access operation.</summary>
    public ushort? OpSpecId { get; init; }

    /// <summary>The table of channels.</summary>
    public ushort? HopTableId { get; init; }

    /// <summary>The channel that comes next.</summary>
    public ushort? NextChannelIndex { get; init; }

    /// <summary>The input port.</summary>
    public ushort? GpiPort { get; init; }

    /// <summary>Whether the input is on.</summary>
    public bool? GpiState { get; init; }

    /// <summary>How full the buffer of reports is, in percent.</summary>
    public byte? BufferPercent { get; init; }

    /// <summary>The answer to a connection: 0 is success.</summary>
    public ushort? ConnectionStatus { get; init; }

    /// <summary>How often a loop was run through.</summary>
    public uint? LoopCount { get; init; }

    /// <summary>How many slots of a part of an operation held more than one tag; null where the reader does not count them.</summary>
    public ushort? CollisionSlotCount { get; init; }

    /// <summary>How many slots of a part of an operation held no tag; null where the reader does not count them.</summary>
    public ushort? EmptySlotCount { get; init; }

    /// <summary>What the reader says of a fault; characters that are not UTF-8 are replaced.</summary>
    public string? Message { get; init; }

    /// <summary>The type of the parameter, where the kind is unknown.</summary>
    public int? ParameterType { get; init; }

    /// <summary>Whose own it is, by private enterprise number.</summary>
    public uint? VendorId { get; init; }

    /// <summary>The maker's number for it.</summary>
    public uint? Subtype { get; init; }
}
