using System;
using Microsoft.Extensions.Logging;

namespace ToolLedger.Reads;

/// <summary>What a host may want to see of sessions. Event ids are stable.</summary>
internal static partial class SessionLog
{
    [LoggerMessage(2001, LogLevel.Information, "Session {Session} opened at station {Station} from {From:O}, {KitCount} kits presented")]
    internal static partial void SessionOpened(ILogger logger, SessionId session, StationId station, DateTimeOffset from, int kitCount);

    [LoggerMessage(2002, LogLevel.Information, "Session {Session}: pass {Pass} began at {At:O}")]
    internal static partial void PassBegan(ILogger logger, SessionId session, int pass, DateTimeOffset at);

    [LoggerMessage(2003, LogLevel.Warning, "Session {Session}: {Loss} at {At:O}, antenna {Antenna}")]
    internal static partial void LossReported(ILogger logger, SessionId session, SessionLoss loss, DateTimeOffset at, AntennaPort antenna);

    [LoggerMessage(2004, LogLevel.Information, "Session {Session} closed at {To:O}: {Health}, {TagCount} tags in {ReadCount} reads")]
    internal static partial void SessionClosed(
        ILogger logger, SessionId session, DateTimeOffset to, SessionState health, int tagCount, long readCount);

    [LoggerMessage(2005, LogLevel.Warning, "Session {Session} is {Health}: {Reasons}")]
    internal static partial void SessionDoubtful(ILogger logger, SessionId session, SessionState health, string reasons);

    [LoggerMessage(2006, LogLevel.Warning, "Session {Session}: a limit was reached, reads can no longer be kept")]
    internal static partial void LimitReached(ILogger logger, SessionId session);
}
