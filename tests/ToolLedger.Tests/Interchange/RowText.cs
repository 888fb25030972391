using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.Json;
using System.Threading;
using System.Threading.Tasks;
using ToolLedger.Interchange;
using ToolLedger.Reads;

namespace ToolLedger.Tests.Interchange;

/// <summary>Reads as rows in the library's own form, and what reading a file gave as lines of text.</summary>
internal static class RowText
{
    internal static string Time(DateTimeOffset time) => time.ToString("yyyy-MM-dd'T'HH:mm:ss.fffffffK", CultureInfo.InvariantCulture);

    internal static string Json(TagRead read, bool escaped = false)
    {
        Dictionary<string, object> members = new(StringComparer.Ordinal) { ["epc"] = read.Tag.Epc.ToString(), ["time"] = Time(read.FirstSeen) };
        Add("antenna", read.Antenna.IsKnown ? (int)read.Antenna.Number : null);
        Add("lastTime", read.LastSeen != read.FirstSeen ? Time(read.LastSeen) : null);
        Add("rssi", read.Strength?.ToDbm());
        Add("count", read.Count);
        Add("tid", read.Tid.IsEmpty ? null : read.Tid.ToString());
        Add("reportId", read.ReportId);
        string line = JsonSerializer.Serialize(members);

        // An escape anywhere sends the whole line the slow way.
        return escaped ? line.Replace("{\"epc\"", "{\"x\":\"\\u0041\",\"\\u0065pc\"", StringComparison.Ordinal) : line;

        void Add(string name, object? value)
        {
            if (value is not null)
            {
                members.Add(name, value);
            }
        }
    }

    internal static string Csv(TagRead read, bool quoted = false)
    {
        string?[] fields =
        [
            read.Tag.Epc.ToString(),
            read.Antenna.IsKnown ? read.Antenna.ToString() : "",
            Time(read.FirstSeen),
            read.LastSeen != read.FirstSeen ? Time(read.LastSeen) : "",
            read.Strength?.ToDbm().ToString(CultureInfo.InvariantCulture),
            read.Count?.ToString(CultureInfo.InvariantCulture),
            read.Tid.ToString(),
            read.ReportId?.ToString(CultureInfo.InvariantCulture),
        ];
        return string.Join(',', fields.Select(field => quoted ? $"\"{field}\"" : field));
    }

    internal const string CsvHeader = "epc,antenna,time,lastTime,rssi,count,tid,reportId";

    internal static List<string> Collect(Func<Action<BadRow>, IEnumerable<TagRead>> read)
    {
        List<string> rows = [];
        foreach (TagRead row in read(bad => rows.Add(Of(bad))))
        {
            rows.Add(row.ToString());
        }

        return rows;
    }

    internal static async Task<List<string>> CollectAsync(Func<Action<BadRow>, IAsyncEnumerable<TagRead>> read, CancellationToken cancellationToken)
    {
        List<string> rows = [];
        await foreach (TagRead row in read(bad => rows.Add(Of(bad))).WithCancellation(cancellationToken))
        {
            rows.Add(row.ToString());
        }

        return rows;
    }

    private static string Of(BadRow bad) => string.Create(CultureInfo.InvariantCulture, $"{bad.ByteOffset} {bad}");
}
