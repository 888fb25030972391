using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Interchange;
using ToolLedger.Kits;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ShiftCloseout;

/// <summary>The ledger of a closeout: read before, told about, added to when the report is ready to be put in its place.</summary>
internal sealed class CloseoutLedger
{
    private const int ChangesShownMax = 20;

    private readonly string path;
    private readonly LedgerBook book;

    private readonly long length;
    private int addedCount;

    private CloseoutLedger(string path, long length, LedgerBook book)
    {
        this.path = path;
        this.length = length;
        this.book = book;
        State = book.Now;
    }

    /// <summary>What follows from the entries that were there before.</summary>
    public LedgerState State { get; }

    public CustodyRegister Custody => State.Custody;

    /// <exception cref="HostException">The file is an input or the report, cannot be read, or holds a line that is no entry.</exception>
    public static CloseoutLedger Open(string path, CloseoutOptions options, CloseoutFiles files)
    {
        if (options.Inputs.Select(static input => input.Path).Concat(options.Targets).Any(other => other is not null && FileKind.IsSame(other, path)))
        {
            throw new HostException(ExitCodes.Usage, $"--ledger {path}: that file is another input of this run, or its report.");
        }

        RequireWritable(path);
        byte[] lines = File.Exists(path) ? InputFile.OnDisk(path).ReadWhole() : [];
        if (lines.Length > 0 && lines[^1] != (byte)'\n')
        {
            // Whatever is added behind half a line would be lost with it.
            throw new HostException(ExitCodes.BadInput, $"{path}: the last line is not ended: the file was cut off. Mend it before anything is added.");
        }

        try
        {
            return new CloseoutLedger(path, lines.Length, new LedgerBook(files.Policy.ToLedgerSettings(files.Kits), LedgerFile.JsonLines(lines)));
        }
        catch (ReadFileException error)
        {
            throw new HostException(ExitCodes.BadInput, $"{path}: {error.Message}");
        }
    }

    /// <summary>Says what changed since the last sign-off of each kit, and adds what is signed.</summary>
    /// <returns>What was added, which can be taken back until it is closed.</returns>
    /// <exception cref="HostException">The file cannot be written, or was changed since it was read; it is as it was then, or the message says what of the entries is there.</exception>
    public LedgerAppend Add(IReadOnlyList<ReconciliationResult> results, CloseoutFiles files, DateTimeOffset now, HostConsole console)
    {
        foreach (LedgerFinding finding in State.Findings.Take(ChangesShownMax))
        {
            console.Say($"{path}: {finding}");
        }

        var added = new List<LedgerEntry>();
        foreach (ReconciliationResult result in results)
        {
            SayChanges(result, console);
            if (result.Signatures.Count == 0)
            {
                console.Say($"{path}: kit {result.Manifest.Id}: nobody has signed the sheet, so nothing is added.");
                continue;
            }

            Signature first = result.Signatures[0];
            Append(StoredRecord.Of(IdOf("manifest", result.Manifest.Id, result.Manifest.Digest), result.Manifest.ToJson(), first), now, added, console);
            Append(StoredRecord.Of(IdOf("policy", result.Manifest.Id, files.Policy.Digest), files.Policy.ToJson(), first), now, added, console);
            byte[] bytes = result.ToJson();
            Append(SignedReconciliation.Of(IdOf("signed", result.Manifest.Id, Digest.Of(bytes)), result, result.Signatures), now, added, console);
        }

        // Without an entry too: the file is made if there is none.
        addedCount = added.Count;
        return LedgerAppend.Add(path, length, LedgerFile.ToJsonLines(added));
    }

    /// <summary>Says what was added, once nothing can take it back.</summary>
    public void SayAdded(HostConsole console)
    {
        if (addedCount > 0)
        {
            console.Say(string.Create(CultureInfo.InvariantCulture, $"{path}: {addedCount} {(addedCount == 1 ? "entry" : "entries")} added."));
        }
    }

    /// <summary>Before anything is read: a run whose entries cannot be added has nothing to give.</summary>
    private static void RequireWritable(string path)
    {
        try
        {
            if (File.Exists(path) && FileKind.IsRegularFile(path))
            {
                new FileStream(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite).Dispose();
            }
            else if (!Directory.Exists(Path.GetDirectoryName(FileKind.RealPath(path))))
            {
                throw new HostException(ExitCodes.Usage, $"--ledger {path}: cannot be written: there is no such folder.");
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new HostException(ExitCodes.Usage, $"--ledger {path}: cannot be written: {error.Message}");
        }
    }

    private void SayChanges(ReconciliationResult result, HostConsole console)
    {
        if (State.LastSignOffOf(result.Manifest.Id, result.AsOf) is not { } last)
        {
            console.Say($"{path}: kit {result.Manifest.Id}: no sign-off before this one.");
            return;
        }

        Reason[] changes = [.. last.DifferencesTo(result).Where(static change => change.Kind == SigningReasons.OtherKitState || change.Kind == SigningReasons.OtherLine)];
        console.Say(string.Create(CultureInfo.InvariantCulture,
            $"{path}: kit {result.Manifest.Id}: {(changes.Length == 0 ? "nothing" : changes.Length)} changed since sign-off {last.Id} of {last.AsOf:yyyy-MM-dd'T'HH:mm:sszzz}."));
        foreach (Reason change in changes.Take(ChangesShownMax))
        {
            console.Say("  " + change);
        }
    }

    private void Append(RecordEntry content, DateTimeOffset now, List<LedgerEntry> added, HostConsole console)
    {
        DateTimeOffset recordedAt = content.At > now ? content.At : now;
        AppendOutcome outcome = book.Append(content, recordedAt, out IReadOnlyList<RecordIssue> issues);
        if (outcome == AppendOutcome.Appended)
        {
            added.Add(new LedgerEntry(content, recordedAt));
        }
        else if (outcome == AppendOutcome.Refused)
        {
            console.Say($"{path}: {content.Kind} {content.Id} was refused: {string.Join(" ", issues)}");
        }
    }

    /// <summary>The same content has the same id, so that the same run twice adds nothing.</summary>
    private static EntryId IdOf(string what, KitId kit, Digest digest)
    {
        string head = $"{what}-{kit}";
        return new EntryId($"{(head.Length > 50 ? head[..50].TrimEnd() : head)}-{digest.ToShortString()}");
    }
}
