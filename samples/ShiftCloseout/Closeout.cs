using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using ToolLedger.Interchange;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Reports;

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
        DateTimeOffset now = console.Clock.GetUtcNow();
        var sessions = new List<ReadSession>();
        SessionReader? reader = null;
        DateTimeOffset asOf = options.AsOf ?? now;
        if (files.Presentation is { } presentation && options.Reads is { } reads)
        {
            if (presentation.Until is not { } until)
            {
                throw new HostException(ExitCodes.BadInput,
                    $"{options.Session!.Name}: $.until: the sheet does not say when the session ended, so its reads cannot be judged (session.no-end)");
            }

            reader = new SessionReader(presentation, files.Policy.Sessions);
            (ReadSession session, SourceDigest source) = await reader.ReadAsync(reads, options.ReadsFormat, until, console, cancellation);
            sessions.Add(session);
            files.Sources.Add(source);
            WarnOfBadRows(reads.Name, reader, console);
        }

        IReadOnlyList<ReconciliationResult> results = Reconcile(files, sessions, asOf);
        var report = new ShiftReport(new ShiftReportInput
        {
            Results = results,
            MadeAt = options.MadeAt ?? now,
            Calendar = files.Policy.Calendar,
            Sources = files.Sources,
            PolicyName = files.Policy.Name,
            PolicyDigest = files.Policy.Digest,
            Refused = reader is { BadRowCount: > 0 } ? [RefusedOf(options.Reads!.Name, reader)] : [],
        });
        ReportOutput.Write(report, options, console);
        return results.Max(result => CodeOf(result.Kit.State));
    }

    private static IReadOnlyList<ReconciliationResult> Reconcile(CloseoutFiles files, IReadOnlyList<ReadSession> sessions, DateTimeOffset asOf)
    {
        foreach (KitId kit in files.Subjects)
        {
            if (files.Kits.Find(kit, asOf) is null)
            {
                throw new HostException(ExitCodes.BadInput, string.Create(CultureInfo.InvariantCulture,
                    $"{files.FileOf(kit)}: the manifest of kit {kit} takes effect after {asOf:yyyy-MM-dd'T'HH:mm:sszzz}, the instant to conclude for (manifest.not-yet-effective)"));
            }
        }

        var reconciler = new Reconciler(files.Policy.Reconciliation);
        var input = new ReconciliationInput
        {
            Kits = files.Kits,
            Subject = files.Subjects[0],
            Sessions = sessions,
            Tags = files.Tags,
            Inventory = files.Inventory,
            Calibration = files.Calibration,
            AsOf = asOf,
        };
        return [.. reconciler.ReconcileAll(input, files.Subjects)];
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
                $"{name}: {reader.BadRowCount} rows refused in all; the session counts as degraded."));
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
