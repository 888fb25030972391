namespace ToolLedger.Interchange.Llrp;

/// <summary>What happened at a reader. Source: LLRP 1.1 (2010), 13.2.6.</summary>
public enum LlrpEventKind
{
    /// <summary>A parameter that is none of the others; it was skipped by its length.</summary>
    Unknown,

    /// <summary>The reader goes to another channel.</summary>
    Hopping,

    /// <summary>An input port changed its state.</summary>
    Gpi,

    /// <summary>A reader operation began (event type 0), ended (1) or gave way to another (2).</summary>
    RoSpec,

    /// <summary>The buffer of reports fills up. Nothing is lost yet.</summary>
    BufferLevelWarning,

    /// <summary>The buffer of reports was full, and reports were lost.</summary>
    BufferOverflow,

    /// <summary>The reader had a fault.</summary>
    ReaderException,

    /// <summary>A survey of the radio field began or ended.</summary>
    RfSurvey,

    /// <summary>A part of a reader operation ended.</summary>
    AiSpec,

    /// <summary>An antenna was disconnected (event type 0) or connected (1).</summary>
    Antenna,

    /// <summary>The answer to a connection: 0 for success, 1 to 3 for failure, 4 when somebody else tried to connect.</summary>
    ConnectionAttempt,

    /// <summary>The connection closes, and nothing follows.</summary>
    ConnectionClose,

    /// <summary>A loop of a reader operation was run through once more.</summary>
    SpecLoop,

    /// <summary>A maker's own.</summary>
    Custom,
}
