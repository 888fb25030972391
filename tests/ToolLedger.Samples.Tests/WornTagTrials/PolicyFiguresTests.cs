using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Reads;
using WornTagTrials;
using Xunit;

namespace ToolLedger.Samples.Tests.WornTagTrials;

public sealed class PolicyFiguresTests
{
    private static readonly string Slice =
        Path.Combine(Repository.Root, "tests", "ToolLedger.Samples.Tests", "data", "worn-tag-room1", "reads.csv");

    [Fact]
    public void Three_policies_say_of_a_tag_that_is_always_there_what_a_separate_program_counted()
    {
        IReadOnlyList<PolicyFigures> figures = PolicyFigures.ThreePolicies();
        using StreamReader file = File.OpenText(Slice);
        foreach (PresenceEvidence evidence in WindowEvidence.Windows(TrialFile.Rows(file), TimeSpan.FromSeconds(30), new SessionPolicy()))
        {
            foreach (PolicyFigures policy in figures)
            {
                policy.Ask(evidence);
            }
        }

        // Counted from the file by a short script that shares nothing with the library: sets of (antenna, half-second slot) a window.
        Assert.Equal(
            [(365, 310, 0, 55), (365, 296, 14, 55), (365, 246, 64, 55)],
            figures.Select(policy => (policy.WindowCount, policy.Accounted, policy.Weak, policy.NotRead)));
    }

    [Fact]
    public void Windows_without_a_read_are_asked_too()
    {
        TrialRow[] rows = [Row(1), Row(100)];

        PresenceEvidence[] windows = [.. WindowEvidence.Windows(rows, TimeSpan.FromSeconds(30), new SessionPolicy())];

        Assert.Equal([1, 0, 0], windows.Select(window => window.LookCount));
    }

    [Theory]
    [InlineData("d1p01,-1,1,-63,0,0,1")]
    [InlineData("d1p01,1,0,-63,0,0,1")]
    [InlineData("d1p01,1,1,NaN,0,0,1")]
    [InlineData("d1p01,1,1,-63,0,0")]
    public void A_row_that_cannot_be_read_is_refused_with_its_line(string row)
    {
        var file = new StringReader($"trial,time_s,antenna,rssi_dbm,phase_rad,frequency_mhz,activity\n{row}\n");

        Assert.StartsWith("line 2:", Assert.Throws<FormatException>(() => TrialFile.Rows(file).Count()).Message, StringComparison.Ordinal);
    }

    private static TrialRow Row(double seconds) => new("t", TimeSpan.FromSeconds(seconds), new AntennaPort(1), Rssi.FromDbm(-60));
}
