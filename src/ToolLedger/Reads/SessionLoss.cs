namespace ToolLedger.Reads;

/// <summary>What a host can know to have been lost while a session was open.</summary>
public enum SessionLoss
{
    /// <summary>The reader or the host dropped reports because a buffer was full.</summary>
    BufferOverflow,

    /// <summary>An antenna was disconnected or failed. Without a port, any antenna may be meant.</summary>
    AntennaDisconnected,

    /// <summary>The connection to the reader closed.</summary>
    ConnectionClosed,

    /// <summary>The reader reported a fault of its own.</summary>
    ReaderFault,

    /// <summary>Reports could not be decoded.</summary>
    DecodeError,

    /// <summary>Rows of a file were refused.</summary>
    RowsRefused,

    /// <summary>The stream of the reader could not be read any further, or ended inside a message.</summary>
    StreamLost,
}
