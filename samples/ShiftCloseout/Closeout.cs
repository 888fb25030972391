using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.Globalization;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using ToolLedger.Custody;
using ToolLedger.Interchange;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Reports;
using ToolLedger.Tools;

namespace ShiftCloseout;

/// <summary>The closeout itself: files in, one conclusion a kit, a report out.</summary>
internal static class Closeout
{
    /// <summary>Runs it and writes the report.</summary>
    /// <returns>The exit code of the kit that needs most attention.</returns>
    /// <exception cref="HostException">A file cannot be read or written, or is refused.</exception>
    public static async Task<int> RunAsync(CloseoutOptions options, HostConsole console, CancellationToken cancellation)
    {
        ReportTarget.Require(options);
        CloseoutFiles files = CloseoutFiles.Load(options);
        CloseoutLedger? ledger = options.Ledger is { } path ? CloseoutLedger.Open(path, options, files) : null;
        DateTimeOffset now = console.Clock.GetUtcNow();
        DateTimeOffset asOf = options.AsOf ?? now;
        var sessions = new List<ReadSession>();
        var refused = new List<RefusedRows>();
        foreach ((Presentation presentation, SessionFiles pair) in files.Presentations.Zip(options.Sessions))
        {
            var reader = new SessionReader(presentation, files.Policy.Sessions);
            (ReadSession session, SourceDigest source) = await reader.ReadAsync(pair.Reads, options.ReadsFormat, presentation.Until!.Value, console, cancellation);
            sessions.Add(session);
            files.Sources.Add(source);
            WarnOfBadRows(pair.Reads.Name, reader, console);
            refused.AddRange(reader.BadRowCount > 0 ? [RefusedOf(pair.Reads.Name, reader)] : []);
        }

        ReconciliationInput input = InputOf(files, sessions, ledger, asOf);
        IReadOnlyList<ReconciliationResult> results = Reconcile(files, input);
        WarnOfOtherKits(results, sessions, options, console);
        List<GateAnswer> gates = options.AsksGate ? [.. results.Select(result => OperationGate.Judge(result, input))] : [];
        var report = new ShiftReport(new ShiftReportInput
        {
            Results = results,
            Sessions = sessions,
            Gates = gates,
            Ledger = ledger?.State,
            MadeAt = options.MadeAt ?? now,
            Calendar = files.Policy.Calendar,
            Sources = files.Sources,
            PolicyName = files.Policy.Name,
            PolicyDigest = files.Policy.Digest,
            IsPolicyDefault = options.Policy is null,
            Refused = refused,
        });
        ReportOutput.Write(report, options, console, () => ledger?.Add(results, files, now, console));
        ledger?.SayAdded(console);
        int code = results.Max(result => CodeOf(result.Kit.State));
        return gates.TrueForAll(gate => gate.IsSatisfied) ? code : Math.Max(code, ExitCodes.OpenOrDiscrepant);
    }

    private static IReadOnlyList<ReconciliationResult> Reconcile(CloseoutFiles files, ReconciliationInput input)
    {
        DateTimeOffset asOf = input.AsOf;
        foreach (KitId kit in files.Subjects)
        {
            if (files.Kits.Find(kit, asOf) is null)
            {
                throw new HostException(ExitCodes.BadInput, string.Create(CultureInfo.InvariantCulture,
                    $"{files.FileOf(kit)}: the manifest of kit {kit} takes effect after {asOf:yyyy-MM-dd'T'HH:mm:sszzz}, the instant to conclude for (manifest.not-yet-effective)"));
            }
        }

        return [.. new Reconciler(files.Policy.Reconciliation).ReconcileAll(input, files.Subjects)];
    }

    private static ReconciliationInput InputOf(CloseoutFiles files, IReadOnlyList<ReadSession> sessions, CloseoutLedger? ledger, DateTimeOffset asOf) => new()
    {
        Kits = files.Kits,
        Subject = files.Subjects[0],
        Sessions = sessions,
        Tags = files.Tags,
        Inventory = files.Inventory,
        Custody = ledger?.Custody ?? CustodyRegister.Empty,
        Calibration = files.Calibration,
        History = files.History?.Histories ?? ReadOnlyDictionary<TagId, TagHistory>.Empty,
        AsOf = asOf,
    };

    /// <summary>A kit mistyped on a sheet would otherwise show only as reads that are not there.</summary>
    private static void WarnOfOtherKits(IReadOnlyList<ReconciliationResult> results, List<ReadSession> sessions, CloseoutOptions options, HostConsole console)
    {
        foreach ((ReadSession session, SessionFiles pair) in sessions.Zip(options.Sessions))
        {
            if (results.All(result => result.Sessions.All(summary => summary.Session.Id != session.Id)))
            {
                console.Say($"{pair.Sheet.Name}: session {session.Id} presents none of the kits to conclude, but {string.Join(", ", session.Presentation.Kits.Take(5))}; if that is not meant, correct the sheet.");
            }
        }
    }

    private static void WarnOfBadRows(string name, SessionReader reader, HostConsole console)
    {
        foreach (BadRow row in reader.BadRows)
        {
            console.Say(string.Create(CultureInfo.InvariantCulture,
                $"{name}: line {row.LineNumber}: refused: {row.Reason} ({row.Rule}): {row.Excerpt}"));
        }

        if (reader.BadRowCount > 0)
        {
            console.Say(string.Create(CultureInfo.InvariantCulture,
                $"{name}: {reader.BadRowCount} {(reader.BadRowCount == 1 ? "row" : "rows")} refused in all; the session counts as degraded."));
        }
    }

    private static RefusedRows RefusedOf(string name, SessionReader reader) => new()
    {
        Source = name,
        Count = reader.BadRowCount,
        First = [.. reader.BadRows.Select(row => new RefusedRow(row.LineNumber, row.Reason))],
    };

    private static int CodeOf(KitState state) => state switch
    {
        KitState.Complete => ExitCodes.Complete,
        KitState.NoValidRead => ExitCodes.NoValidRead,
        _ => ExitCodes.OpenOrDiscrepant,
    };
}
