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

if (args is not [var path, ..])
{
    Console.Error.WriteLine("usage: dotnet run to-csv.cs -- ledger.jsonl [from until, times with offset]");
    return 64;
}

DateTimeOffset from = args.Length > 2 ? DateTimeOffset.Parse(args[1], CultureInfo.InvariantCulture) : DateTimeOffset.MinValue;
DateTimeOffset until = args.Length > 2 ? DateTimeOffset.Parse(args[2], CultureInfo.InvariantCulture) : DateTimeOffset.MaxValue;
LedgerBook book = SiteLedger.Open(LedgerFile.JsonLines(File.ReadAllBytes(path)));
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

// A spreadsheet takes a field that begins with one of these for a formula; the apostrophe says that it is text.
static string Quoted(string field)
{
    string text = field.Length > 0 && field[0] is '=' or '+' or '-' or '@' ? "'" + field : field;
    return text.AsSpan().ContainsAny("\",\r\n") ? "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : text;
}
