using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Architecture;

/// <summary>Hosts store reason codes and translate by them, so the list of codes is kept like the public surface: in a document.</summary>
public sealed partial class ReasonCodeTests
{
    [Fact]
    public void No_two_reasons_share_a_code() =>
        Assert.Empty(Lists().SelectMany(list => list.Kinds).GroupBy(kind => kind.Code, StringComparer.Ordinal).Where(same => same.Count() > 1).Select(same => same.Key));

    /// <summary>A kind that is a property of its class but not in its list would be missing from every translation.</summary>
    [Fact]
    public void Every_kind_that_a_class_declares_is_in_its_list()
    {
        foreach ((Type type, IReadOnlyList<ReasonKind> kinds) in Lists())
        {
            IEnumerable<ReasonKind> declared = type.GetProperties(BindingFlags.Public | BindingFlags.Static)
                .Where(property => property.PropertyType == typeof(ReasonKind))
                .Select(property => (ReasonKind)property.GetValue(null)!);
            Assert.Equal(
                declared.Select(kind => kind.Code).Order(StringComparer.Ordinal),
                kinds.Select(kind => kind.Code).Order(StringComparer.Ordinal),
                StringComparer.Ordinal);
        }
    }

    [Fact]
    public void Every_code_is_words_in_lower_case_with_dots_and_hyphens() =>
        Assert.All(Lists().SelectMany(list => list.Kinds), kind => Assert.Matches(Code(), kind.Code));

    [Fact]
    public void Every_list_of_reasons_is_found() => Assert.Equal(
        House.Load("ToolLedger").GetTypes()
            .Where(type => type.GetProperties(BindingFlags.Public | BindingFlags.Static).Any(property => property.PropertyType == typeof(ReasonKind)))
            .Select(type => type.FullName)
            .Order(StringComparer.Ordinal),
        Lists().Select(list => list.Type.FullName).Order(StringComparer.Ordinal));

    /// <summary>Fails when a code comes, goes or changes its placeholders without its document; lays the new text beside the build's output.</summary>
    [Fact]
    public void The_document_lists_every_code_with_its_sentence()
    {
        string expected = Document();
        string path = Path.Combine(House.RootFolder(), "docs", "reasons.md");
        string actual = File.Exists(path) ? File.ReadAllText(path).ReplaceLineEndings("\n") : "";
        if (!expected.Equals(actual, StringComparison.Ordinal))
        {
            string aside = Path.Combine(House.RootFolder(), "artifacts", "reasons.md");
            Directory.CreateDirectory(Path.GetDirectoryName(aside)!);
            File.WriteAllText(aside, expected);
        }

        Assert.True(expected.Equals(actual, StringComparison.Ordinal), "docs/reasons.md differs. If the change is meant: cp artifacts/reasons.md docs/reasons.md");
    }

    private static string Document()
    {
        StringBuilder text = new();
        text.Append("""
            # Reasons and refusals

            Every conclusion that is not plain, and every refusal, carries a code and the values that belong to it; a sentence is made from them. Codes are stable: a
            host may store them, compare them and translate by them with `Wording`. Sentences may change. A test compares this list with the code.

            """.ReplaceLineEndings("\n"));
        foreach ((Type type, IReadOnlyList<ReasonKind> kinds) in Lists())
        {
            text.Append('\n').Append("## ").Append(type.FullName!["ToolLedger.".Length..]).Append("\n\n| code | sentence |\n|---|---|\n");
            foreach (ReasonKind kind in kinds.OrderBy(kind => kind.Code, StringComparer.Ordinal))
            {
                text.Append("| `").Append(kind.Code).Append("` | ").Append(kind.Sentence.Replace("|", "\\|", StringComparison.Ordinal)).Append(" |\n");
            }
        }

        return text.ToString();
    }

    /// <summary>The classes with a list of kinds, in the order of the rooms.</summary>
    private static IEnumerable<(Type Type, IReadOnlyList<ReasonKind> Kinds)> Lists() => House.Load("ToolLedger").GetTypes()
        .Select(type => (Type: type, All: type.GetProperty("All", BindingFlags.Public | BindingFlags.Static)?.GetValue(null) as IEnumerable<ReasonKind>))
        .Where(list => list.All is not null)
        .OrderBy(list => FlowCheck.RoomIndex(list.Type, House.Domain))
        .ThenBy(list => list.Type.Name, StringComparer.Ordinal)
        .Select(list => (list.Type, (IReadOnlyList<ReasonKind>)[.. list.All!]));

    [GeneratedRegex(@"^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)+$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Code();
}
