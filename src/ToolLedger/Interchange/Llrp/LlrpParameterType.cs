using System;

namespace ToolLedger.Interchange.Llrp;

/// <summary>The numbers of the parameters that are read, and the sizes of those that carry none. Source: LLRP 1.1 (2010), definition of the
/// parameters; for 15 the published definitions of a device service.</summary>
internal static class LlrpParameterType
{
    internal const int AntennaId = 1;
    internal const int FirstSeenUtc = 2;
    internal const int FirstSeenUptime = 3;
    internal const int LastSeenUtc = 4;
    internal const int LastSeenUptime = 5;
    internal const int PeakRssi = 6;
    internal const int ChannelIndex = 7;
    internal const int TagSeenCount = 8;
    internal const int RoSpecId = 9;
    internal const int InventoryParameterSpecId = 10;
    internal const int Crc = 11;
    internal const int ProtocolControl = 12;
    internal const int Epc96 = 13;
    internal const int SpecIndex = 14;
    internal const int ClientRequestResult = 15;
    internal const int AccessSpecId = 16;
    internal const int OpSpecId = 17;
    internal const int SingulationDetails = 18;
    internal const int XpcW1 = 19;
    internal const int XpcW2 = 20;

    internal const int UtcTimestamp = 128;
    internal const int Uptime = 129;
    internal const int TagReportData = 240;
    internal const int EpcData = 241;
    internal const int ReaderEventNotificationData = 246;
    internal const int HoppingEvent = 247;
    internal const int GpiEvent = 248;
    internal const int RoSpecEvent = 249;
    internal const int BufferLevelWarning = 250;
    internal const int BufferOverflow = 251;
    internal const int ReaderException = 252;
    internal const int RfSurveyEvent = 253;
    internal const int AiSpecEvent = 254;
    internal const int AntennaEvent = 255;
    internal const int ConnectionAttempt = 256;
    internal const int ConnectionClose = 257;
    internal const int Status = 287;
    internal const int ReadResult = 349;
    internal const int WriteResult = 350;
    internal const int KillResult = 351;
    internal const int LockResult = 352;
    internal const int BlockEraseResult = 353;
    internal const int BlockWriteResult = 354;
    internal const int SpecLoopEvent = 356;
    internal const int RecommissionResult = 360;
    internal const int BlockPermalockResult = 361;
    internal const int PermalockStatusResult = 362;
    internal const int Custom = 1023;

    /// <summary>One more than the highest type without a length.</summary>
    internal const int FixedCount = 21;

    // By type: the bytes of the value; 0 for a type that is not known.
    private static ReadOnlySpan<byte> FixedSizes => [0, 2, 8, 8, 8, 8, 1, 2, 2, 4, 2, 2, 2, 12, 2, 2, 4, 2, 4, 2, 2];

    /// <summary>The bytes of the value of a parameter without a length; 0 when the type is not known.</summary>
    internal static int FixedSize(int type) => type < FixedCount ? FixedSizes[type] : 0;

    /// <summary>Whether a tag report may hold the parameter more than once.</summary>
    internal static bool IsRepeatable(int type) => type is ClientRequestResult or OpSpecId or SingulationDetails;

    /// <summary>The fewest bytes of a parameter with a length, its own four included.</summary>
    internal static int LengthMin(int type) => type switch
    {
        UtcTimestamp or Uptime or Custom => 12,
        RoSpecEvent => 13,
        RfSurveyEvent or AiSpecEvent => 11,
        SpecLoopEvent => 12,
        HoppingEvent or Status => 8,
        ReadResult or WriteResult or BlockWriteResult or PermalockStatusResult => 9,
        GpiEvent or AntennaEvent or KillResult or LockResult or BlockEraseResult or RecommissionResult or BlockPermalockResult => 7,
        ConnectionAttempt or ReaderException or EpcData => 6,
        BufferLevelWarning => 5,
        _ => 4,
    };
}
