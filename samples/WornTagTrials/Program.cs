// Worn tag trials: an adapter for the comma-separated file of a published laboratory experiment, and one question asked of it.
//
//   dotnet run --project samples/WornTagTrials -- reads.csv
//
// What it is for. A person wore one battery-less UHF tag in a room with four antennas, so every stretch without a read is a read missed of
// a tag that was there. The program cuts each trial into windows of 30 s and asks three counting policies what they would have said.
//
// What an integrator can take from it. TrialFile shows a reader for a format that is nobody's standard; WindowEvidence shows how looks come
// from a ReadSessionBuilder and go into a PresencePolicy without a reconciliation.
//
// What the adapter makes up, because the file does not say it: the tag's name ("worn-tag") and the date of each trial (trial n starts n
// days after 2016-01-01T00:00Z). There is no control tag, so session health means nothing here and is not asked; a real host must ask it.
//
// The file: data set 427 of the UCI Machine Learning Repository, CC BY 4.0; a slice lies in tests/ToolLedger.Samples.Tests/data.
using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using ToolLedger.Presence;
using ToolLedger.Reads;
using WornTagTrials;

if (args.Length != 1 || args[0].StartsWith('-'))
{
    Console.Error.WriteLine("usage: WornTagTrials <reads.csv>");
    return 64;
}

if (!File.Exists(args[0]))
{
    Console.Error.WriteLine($"{args[0]}: there is no such file.");
    return 64;
}

try
{
    IReadOnlyList<PolicyFigures> figures = PolicyFigures.ThreePolicies();
    using var file = new StreamReader(args[0]);
    foreach (PresenceEvidence evidence in WindowEvidence.Windows(TrialFile.Rows(file), TimeSpan.FromSeconds(30), new SessionPolicy()))
    {
        foreach (PolicyFigures policy in figures)
        {
            policy.Ask(evidence);
        }
    }

    CultureInfo invariant = CultureInfo.InvariantCulture;
    Console.WriteLine("The tag was there all the time. What each policy says per window of 30 s:");
    Console.WriteLine();
    Console.WriteLine("policy                 windows   accounted          weak      not read");
    foreach (PolicyFigures policy in figures)
    {
        string Cell(int count) => string.Create(invariant, $"{count,5} {100.0 * count / Math.Max(1, policy.WindowCount),6:0.0} %");
        Console.WriteLine(string.Create(invariant, $"{policy.Name,-20} {policy.WindowCount,9} {Cell(policy.Accounted)} {Cell(policy.Weak)} {Cell(policy.NotRead)}"));
    }

    return 0;
}
catch (Exception error) when (error is IOException or UnauthorizedAccessException or FormatException)
{
    Console.Error.WriteLine($"{args[0]}: {error.Message}");
    return 65;
}
