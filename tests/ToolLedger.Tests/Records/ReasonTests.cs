using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using FsCheck.Xunit;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Records;

public sealed class ReasonTests
{
    private static readonly ReasonKind Kind = new("test.two-values", "The {first} before the {second}.");

    [Property]
    public bool A_sentence_never_holds_a_raw_control_or_format_character(string value)
    {
        string text = new Reason(Kind, ("first", value ?? ""), ("second", "x\u202e\u001b[31m")).ToString();
        return !text.Any(c => char.IsControl(c) || c == '\u202e') && text.EndsWith("x\\u{202E}\\u{001B}[31m.", StringComparison.Ordinal);
    }

    [Fact]
    public void A_reason_fills_its_values_in_and_leaves_an_unknown_placeholder()
    {
        Assert.Equal("The a before the {second}.", new Reason(Kind, ("first", "a")).ToString());
        Assert.Equal("The {second} before the b.", new Reason(Kind, ("first", "{second}"), ("second", "b")).ToString());
    }

    [Theory]
    [InlineData("{n} {n:line|lines}", "1", "1 line")]
    [InlineData("{n} {n:line|lines}", "0", "0 lines")]
    [InlineData("{n} {n:line|lines}", "11", "11 lines")]
    [InlineData("{n} {n:|lines}", "1", "1 ")]
    [InlineData("{n:line}", "1", "{n:line}")] // no choice, and no value of that name
    [InlineData("{m:line|lines}", "1", "{m:line|lines}")]
    public void A_word_goes_with_the_number_it_stands_beside(string sentence, string n, string said) =>
        Assert.Equal(said, new Reason(new ReasonKind("test.plural", sentence), ("n", n)).ToString());

    [Fact]
    public void A_value_that_looks_like_a_choice_is_not_taken_for_one() =>
        Assert.Equal("The {second:a|b} before the 1.", new Reason(Kind, ("first", "{second:a|b}"), ("second", "1")).ToString());

    [Fact]
    public void Reasons_are_equal_by_code_and_values()
    {
        var reason = new Reason(Kind, ("first", "a"));
        var alike = new Reason(new ReasonKind("test.two-values", "Other words."), ("first", "a"));
        Assert.Equal(reason, alike);
        Assert.Equal(reason.GetHashCode(), alike.GetHashCode());
        Assert.NotEqual(reason, new Reason(Kind, ("first", "b")));
        Assert.NotEqual(reason, new Reason(Kind, ("second", "a")));
        Assert.NotEqual(reason, new Reason(Kind));
    }

    [Fact]
    public void A_wording_replaces_sentences_by_code_and_falls_back_to_English()
    {
        var wording = new Wording(new Dictionary<string, string>(StringComparer.Ordinal) { ["test.two-values"] = "{second} nach {first}" });
        Assert.Equal("b nach a", wording.Say(new Reason(Kind, ("first", "a"), ("second", "b"))));
        Assert.Equal("There is nothing to read.", wording.Say(new Reason(RecordRules.Empty)));
    }

    [Theory]
    [InlineData("")]
    [InlineData("Upper.case")]
    [InlineData("with space")]
    [InlineData(".dot-in-front")]
    [InlineData("hyphen-behind-")]
    [InlineData("under_score")]
    public void A_code_of_another_form_is_refused(string code) =>
        Assert.Throws<ArgumentException>(() => new ReasonKind(code, "Sentence."));

    [Fact]
    public void Every_list_of_kinds_names_each_kind_of_its_class_once_and_no_code_stands_for_two()
    {
        var codes = new HashSet<string>(StringComparer.Ordinal);
        Type[] lists = [.. typeof(ReasonKind).Assembly.GetExportedTypes().Where(type => DeclaredKinds(type).Length > 0)];
        Assert.NotEmpty(lists);
        foreach (Type type in lists)
        {
            var all = (IReadOnlyList<ReasonKind>?)type.GetProperty("All")?.GetValue(null);
            Assert.NotNull(all);
            Assert.Equal(DeclaredKinds(type).Select(kind => kind.Code).Order(StringComparer.Ordinal), all.Select(kind => kind.Code).Order(StringComparer.Ordinal));
            Assert.All(all, kind => Assert.True(codes.Add(kind.Code), $"{kind.Code} of {type} stands for another kind already."));
        }
    }

    private static ReasonKind[] DeclaredKinds(Type type) =>
    [
        .. type.GetProperties(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly)
            .Where(property => property.PropertyType == typeof(ReasonKind)).Select(property => (ReasonKind)property.GetValue(null)!),
    ];
}
