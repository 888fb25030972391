namespace ToolLedger.Interchange.Llrp;

/// <summary>The rules that bytes of an LLRP stream can break. The list is closed: every fault names one of these.</summary>
public enum LlrpRule
{
    /// <summary>Nothing is wrong.</summary>
    None,

    /// <summary>The header names a protocol version other than 1 to 3. Nothing behind it can be read.</summary>
    UnsupportedVersion,

    /// <summary>The header states a length below its own 10 bytes. Nothing behind it can be read.</summary>
    MessageTooShort,

    /// <summary>The header states a length over the limit. Nothing behind it can be read.</summary>
    MessageTooLong,

    /// <summary>The stream ended inside a message.</summary>
    StreamCut,

    /// <summary>A parameter states a length below what it must hold.</summary>
    ParameterTooShort,

    /// <summary>A parameter ends behind the end of what encloses it.</summary>
    ParameterOverrun,

    /// <summary>A parameter without a length has an unknown type, so that the rest of what encloses it cannot be read.</summary>
    UnknownParameter,

    /// <summary>Bytes are left over where a parameter would have to begin.</summary>
    StrayBytes,

    /// <summary>A parameter that may stand there once stands there twice.</summary>
    RepeatedParameter,

    /// <summary>A count of bits, words or characters does not fit the length of its parameter.</summary>
    CountMismatch,

    /// <summary>A tag report names no tag.</summary>
    NoTag,

    /// <summary>A tag report names two tags.</summary>
    TwoTags,

    /// <summary>A notification lacks its event data, or a status message its status.</summary>
    MissingData,

    /// <summary>A notification holds more events than are read from one.</summary>
    TooManyEvents,

    /// <summary>A tag report has no time by a clock that can be placed.</summary>
    NoTime,

    /// <summary>A time lies outside the years 1970 to 2999.</summary>
    TimeOutOfRange,

    /// <summary>The last instant of a report is before its first.</summary>
    TimesReversed,

    /// <summary>An antenna number is not one of 1 to 255.</summary>
    AntennaOutOfRange,

    /// <summary>A TID of more than 2,048 bits.</summary>
    TidTooLong,
}
