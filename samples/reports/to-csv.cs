#:project ../../src/ToolLedger/ToolLedger.csproj
// The entries of a period as CSV (RFC 4180) for a spreadsheet; names stay outside, persons are ids.
// dotnet run to-csv.cs -- ledger.jsonl [from until]
using System;
using System.Globalization;
using System.IO;
using System.Linq;
using ToolLedger.Interchange;
using ToolLedger.Ledger;
using ToolLedger.Policies;
using ToolLedger.Records;

if (args is not [var path, ..])
{
    Console.Error.WriteLine("usage: dotnet run to-csv.cs -- ledger.jsonl [from until, times with offset]");
    return 64;
}

DateTimeOffset from = DateTimeOffset.MinValue, until = DateTimeOffset.MaxValue;
if (args.Length == 2 || (args.Length > 2 && !(TryTime(args[1], out from) && TryTime(args[2], out until))))
{
    Console.Error.WriteLine("a period is two times with offset, such as 2026-10-14T00:00:00+02:00 2026-10-15T00:00:00+02:00");
    return 64;
}

LedgerBook book;
try
{
    book = SiteLedger.Open(LedgerFile.JsonLines(File.ReadAllBytes(path)));
}
catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ReadFileException or RecordException)
{
    Console.Error.WriteLine($"{path}: {problem.Message}");
    return 65;
}

// Entries that take no effect or dispute each other: what is said here is said without them.
foreach (LedgerFinding finding in book.Now.Findings)
{
    Console.Error.WriteLine($"look into this first: {finding}");
}

Console.WriteLine("id,kind,occurredAt,recordedAt,actor,witness,remark,digest");
foreach (LedgerEntry entry in book.Between(from, until))
{
    string[] fields =
    [
        entry.Id.Value, entry.Kind, entry.OccurredAt.ToString("O", CultureInfo.InvariantCulture), entry.RecordedAt.ToString("O", CultureInfo.InvariantCulture),
        entry.Actor.Value, entry.Witness.Value, entry.Reason ?? "", entry.Digest.ToString(),
    ];
    Console.WriteLine(string.Join(',', fields.Select(Quoted)));
}

return 0;

// A time without an offset is no instant.
static bool TryTime(string text, out DateTimeOffset time) => DateTimeOffset.TryParseExact(
    text, ["yyyy-MM-dd'T'HH:mm:sszzz", "yyyy-MM-dd'T'HH:mm:ss'Z'"], CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out time);

// A spreadsheet takes a field that begins with one of these for a formula; the apostrophe says that it is text.
static string Quoted(string field)
{
    string text = field.Length > 0 && field[0] is '=' or '+' or '-' or '@' ? "'" + field : field;
    return text.AsSpan().ContainsAny("\",\r\n") ? "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : text;
}
