using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using ToolLedger.Tests.Architecture;
using Xunit;

namespace ToolLedger.Tests.Statistics;

/// <summary>Every vector of statistics.json is checked by a test, or stands here with why it concerns nothing that ships. A new one that is neither fails.</summary>
public sealed class VectorUseTests
{
    private const string Sequential = "Wald's sequential test of one tool; a line is decided from all its looks at once, and error rates come from exact sums";
    private const string Plan = "a plan that draws item by item and is not shipped; plans here are of passes of a fixed size";
    private const string Slots = "collisions among tags of one round; readers arbitrate, and the library sees what they report";
    private const string Smoothing = "an estimate of how many tags there are, and a window over a stream; tools are accounted for one by one";
    private const string Ranking = "adjusted levels for ranking many calls; the kit's limit is divided by its lines";

    private static readonly VectorFile Reads = new("tests", "ToolLedger.Tests", "Statistics", "Data", "statistics.json");

    private static readonly Dictionary<string, string> NotShipped = new(StringComparer.Ordinal)
    {
        ["sprt_binomial_lines"] = Plan,
        ["sprt_first_accept_n"] = Plan,
        ["sprt_first_reject_n"] = Plan,
        ["sprt_rejection_number"] = Plan,
        ["sprt_asn_wald"] = Plan,
        ["sprt_exact_oc"] = Plan,
        ["sprt_exact_read"] = Sequential,
        ["wilson"] = "an interval for display; every bound shown is Clopper and Pearson's",
        ["fisher_exact_2x2"] = "a comparison of two kinds of tags, which is a matter of trials",
        ["cusum_tabular"] = "a sum of measured values; a tag that fades is watched by misses",
        ["benjamini_hochberg"] = Ranking,
        ["bonferroni"] = Ranking,
        ["holm"] = Ranking,
        ["framed_aloha"] = Slots,
        ["aloha_limit"] = Slots,
        ["smurf_transition"] = Smoothing,
        ["smurf_pi_estimator"] = Smoothing,
        ["smurf_window_step"] = Smoothing,
    };

    [Fact]
    public void Every_vector_is_checked_or_listed_with_a_reason()
    {
        string folder = Path.Combine(House.RootFolder(), "tests", "ToolLedger.Tests");
        string sources = string.Concat(Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories).Select(File.ReadAllText));
        HashSet<string> methods = [.. Reads.All.Select(static vector => vector.Method)];

        Assert.All(methods, method => Assert.True(
            sources.Contains($".Of(\"{method}\")", StringComparison.Ordinal) != NotShipped.ContainsKey(method), $"{method} is neither checked nor listed, or both."));
        Assert.All(NotShipped.Keys, method => Assert.Contains(method, methods));
    }
}
