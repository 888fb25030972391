using System;
using System.Linq;
using System.Text.Json;
using AngleSharp.Dom;
using ToolLedger.Reconciliation;
using ToolLedger.Reports;
using ToolLedger.Tests.Reconciliation;
using Xunit;
using static ToolLedger.Tests.Reports.Printed;

namespace ToolLedger.Tests.Reports;

/// <summary>The site's own rules, named where the digest they are part of is told; never one that took no part.</summary>
public sealed class PolicyRulesTests
{
    private static readonly IReconciliationRule[] Two = [new Silent("torque-tools-need-eyes", "2.1"), new Silent("no-loans-at-night", "1.0")];

    [Fact]
    public void Every_form_for_people_names_the_rules_with_their_versions()
    {
        ReconciliationResult result = With(Two);
        ShiftReport report = Report(result, Two);
        using IDocument page = Html.Parse(report.ToHtml());
        const string named = "Rules of the site in it, name and version: no-loans-at-night 1.0, torque-tools-need-eyes 2.1.";

        Assert.Contains($"digest with rules {result.PolicyDigest.ToShortString()}; library version {result.LibraryVersion}. {named}", Unwrapped(report.ToText()), StringComparison.Ordinal);
        Assert.Contains(named, report.ToMarkdown().Replace("\\", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains(page.Texts(".digests tr"), row => row.Contains(named, StringComparison.Ordinal) && row.Contains(result.PolicyDigest.ToString(), StringComparison.Ordinal));
    }

    // A result holds only the digest of its rules, but that there are some it shows.
    [Fact]
    public void Rules_that_the_report_was_not_told_are_not_passed_over()
    {
        const string unnamed = "It has rules of the site that this report was not told by name.";

        Assert.Contains(unnamed, Unwrapped(Report(With(Two), []).ToText()), StringComparison.Ordinal);
        Assert.Contains(unnamed, Report(With(Two), []).ToHtml(), StringComparison.Ordinal);
        Assert.DoesNotContain("ules of the site", Report(With([]), []).ToText(), StringComparison.Ordinal);
    }

    // Whoever reads the file later must know which logic beside the library's took part, and be able to find that version of it.
    [Fact]
    public void The_file_names_the_rules_with_version_and_settings_and_says_where_some_are_not_named()
    {
        byte[] named = Report(With(Two), Two).ToJson(), unnamed = Report(With(Two), []).ToJson(), none = Report(With([]), []).ToJson();
        Assert.All(new[] { named, unnamed, none }, static json => StoredSchema.AssertAccepts("shift-report", json));

        Assert.Equal("""{"isDefault":false,"rules":[{"name":"no-loans-at-night","version":"1.0","settings":"from 22 to 6"},{"name":"torque-tools-need-eyes","version":"2.1","settings":"from 22 to 6"}],"hasOtherRules":false}""", PolicyOf(named));
        Assert.Equal("""{"isDefault":false,"rules":[],"hasOtherRules":true}""", PolicyOf(unnamed));
        Assert.Equal("""{"isDefault":false,"rules":[],"hasOtherRules":false}""", PolicyOf(none));
        Assert.Equal(PolicyOf(named), PolicyOf(Report(With(Two), [.. Two.Reverse()]).ToJson()));
    }

    [Fact]
    public void Rules_that_took_no_part_are_refused()
    {
        IReconciliationRule[] other = [Two[0], new Silent("no-loans-at-night", "1.1")];

        Assert.Throws<ArgumentException>(() => Report(With([]), Two));
        Assert.Throws<ArgumentException>(() => Report(With(Two), Two[..1]));
        Assert.Throws<ArgumentException>(() => Report(With(Two), other));
        Assert.NotEmpty(Report(With(Two), [.. Two.Reverse()]).ToText());
    }

    private static string PolicyOf(byte[] json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        return JsonSerializer.Serialize(document.RootElement.GetProperty("policy"));
    }

    private static ReconciliationResult With(IReconciliationRule[] rules) => new World { Rules = rules }.ReadAllBut().CountAll().Reconcile();

    private static ShiftReport Report(ReconciliationResult result, IReconciliationRule[] rules) => new(new ShiftReportInput { Results = [result], MadeAt = result.AsOf, Rules = rules });

    private sealed class Silent(string name, string version) : IReconciliationRule
    {
        public string Name => name;

        public string Version => version;

        public string Settings => "from 22 to 6";

        public Verdict Judge(in LineFacts facts) => Verdict.NoObjection;
    }
}
