using System;
using System.Collections.Generic;
using Microsoft.Extensions.Logging;
using ToolLedger.Reads;
using Xunit;

namespace ToolLedger.Tests.Reads;

/// <summary>What a host sees of a session in its log.</summary>
public sealed class SessionLogTests
{
    [Fact]
    public void Opening_passes_losses_and_closing_are_logged_with_stable_event_ids()
    {
        var log = new ListLogger();
        var builder = new ReadSessionBuilder(new SessionScene().Presentation, new SessionPolicy { TagLimit = 1 }, log);
        builder.BeginPass(SessionScene.At(20));
        builder.ReportLoss(SessionLoss.AntennaDisconnected, SessionScene.At(30), new AntennaPort(2));
        builder.Add(SessionScene.Read(SessionScene.Tool(1), 1, 1));
        builder.Add(SessionScene.Read(SessionScene.Tool(2), 1, 1));
        builder.Add(SessionScene.Read(SessionScene.Tool(3), 1, 1));
        builder.Close(SessionScene.At(60), TimeSpan.Zero);
        Assert.Equal([2001, 2002, 2003, 2006, 2004, 2005], log.Events.ConvertAll(entry => entry.Id));
        Assert.Equal("Session S1: AntennaDisconnected at 2026-03-01T15:55:30.0000000+00:00, antenna 2", log.Events[2].Text);
        Assert.StartsWith("Session S1 closed at 2026-03-01T15:56:00.0000000+00:00: Invalid, 1 tags in 3 reads", log.Events[4].Text, StringComparison.Ordinal);
    }

    private sealed class ListLogger : ILogger
    {
        internal List<(int Id, string Text)> Events { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            Events.Add((eventId.Id, formatter(state, exception)));
    }
}
