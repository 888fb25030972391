using System.Diagnostics.CodeAnalysis;

namespace ToolLedger.Interchange.Llrp;

/// <summary>The types of messages that mean something for reads. Every other number of 10 bits may occur and is skipped by its
/// length. Source: LLRP 1.1 (2010), definition of the messages.</summary>
[SuppressMessage("Design", "CA1008:Enums should have zero value", Justification = "The numbers are those of the protocol, which has no message 0.")]
public enum LlrpMessageType
{
    /// <summary>CLOSE_CONNECTION_RESPONSE: the reader is about to close the connection.</summary>
    CloseConnectionResponse = 4,

    /// <summary>CLOSE_CONNECTION: the client asks for the end of the connection.</summary>
    CloseConnection = 14,

    /// <summary>RO_ACCESS_REPORT: tag reports.</summary>
    RoAccessReport = 61,

    /// <summary>KEEPALIVE: the client must answer with <see cref="KeepaliveAck"/>.</summary>
    Keepalive = 62,

    /// <summary>READER_EVENT_NOTIFICATION: what happened at the reader.</summary>
    ReaderEventNotification = 63,

    /// <summary>ENABLE_EVENTS_AND_REPORTS: the client asks for what the reader held back.</summary>
    EnableEventsAndReports = 64,

    /// <summary>KEEPALIVE_ACK: the answer to <see cref="Keepalive"/>.</summary>
    KeepaliveAck = 72,

    /// <summary>ERROR_MESSAGE: the reader did not understand a message, or could not do what it asked.</summary>
    ErrorMessage = 100,

    /// <summary>CUSTOM_MESSAGE: a maker's own; not interpreted.</summary>
    CustomMessage = 1023,
}
