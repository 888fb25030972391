using System;
using System.Globalization;
using System.IO;
using ToolLedger.Tests.Architecture;

namespace ToolLedger.Tests.Reconciliation.Closeouts;

/// <summary>One run of simulated closeouts, shared by the tests of a class. TOOLLEDGER_CLOSEOUTS sets how many; the seeds are 1, 2, 3 and so on.</summary>
public sealed class CloseoutRun
{
    public CloseoutRun()
    {
        int count = Environment.GetEnvironmentVariable("TOOLLEDGER_CLOSEOUTS") is { Length: > 0 } text ? int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture) : 2000;
        for (int seed = 1; seed <= count; seed++)
        {
            var closeout = new Closeout(seed);
            Quiet.Add(closeout.Truth, closeout.Quiet());
            Busy.Add(closeout.Truth, closeout.Busy());
            Then.Add(closeout.Truth, closeout.BusyThenQuiet());
        }

        string folder = Path.Combine(House.RootFolder(), "artifacts");
        Directory.CreateDirectory(folder);
        File.WriteAllText(
            Path.Combine(folder, "closeouts.md"),
            string.Create(CultureInfo.InvariantCulture, $"{count} closeouts, seeds 1 to {count}\n\nNobody near\n\n{Quiet.ToMarkdown()}\nBusy\n\n{Busy.ToMarkdown()}\nBusy, then once more with everything else moved away\n\n{Then.ToMarkdown()}"));
    }

    internal CloseoutTable Quiet { get; } = new();

    internal CloseoutTable Busy { get; } = new();

    internal CloseoutTable Then { get; } = new();
}
