using System;
using System.Collections.Generic;
using FsCheck;
using FsCheck.Fluent;
using ToolLedger.Records;

namespace ToolLedger.Tests.Records;

/// <summary>Bytes of a stored record changed at random are read or refused with issues, and never raise anything.</summary>
internal static class DamagedRecord
{
    internal delegate bool TryParse<T>(ReadOnlySpan<byte> utf8Json, out T? read, out IReadOnlyList<RecordIssue> issues)
        where T : class;

    public static Property IsReadOrRefused<T>(byte[] json, PositiveInt[] places, byte[] values, TryParse<T> tryParse)
        where T : class
    {
        for (int index = 0; index < Math.Min(places.Length, values.Length); index++)
        {
            json[places[index].Get % json.Length] = values[index];
        }

        bool isRead = tryParse(json, out T? read, out IReadOnlyList<RecordIssue> issues);
        return (isRead ? read is not null && issues.Count == 0 : read is null && issues.Count > 0).ToProperty();
    }
}
