using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Testing.Generators;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Records;

/// <summary>Ids of every room share one rule; PersonId stands for all, the last test holds the others to it.</summary>
public sealed class IdTests
{
    public static TheoryData<string, string> Refused { get; } = new()
    {
        { "empty", "" },
        { "only a space", " " },
        { "space in front", " A" },
        { "space behind", "A " },
        { "no-break space behind", "A\u00a0" },
        { "line feed", "A\nB" },
        { "escape, which moves a cursor", "A\u001b[2J" },
        { "delete", "A\u007fB" },
        { "C1 control", "A\u009bB" },
        { "right-to-left override", "A\u202eB" },
        { "zero-width space", "A\u200bB" },
        { "byte order mark", "A\ufeffB" },
        { "line separator", "A\u2028B" },
        { "tag character beyond the basic plane", "A\U000E0041B" },
        { "private use", "A\ue000B" },
        { "unassigned", "A\u0378B" },
        { "half of a pair", "A\ud800" },
        { "halves in the wrong order", "\udc00\ud800" },
        { "combining grapheme joiner", "A\u034fB" },
        { "Hangul choseong filler", "A\u115fB" },
        { "Hangul jungseong filler", "A\u1160B" },
        { "Khmer inherent vowel aq", "A\u17b4B" },
        { "Khmer inherent vowel aa", "A\u17b5B" },
        { "first Mongolian variation selector", "A\u180bB" },
        { "last Mongolian variation selector", "A\u180fB" },
        { "Hangul filler alone", "\u3164" },
        { "halfwidth Hangul filler", "\uffa0" },
        { "first variation selector", "A\ufe00B" },
        { "last variation selector of the basic plane", "A\ufe0f" },
        { "first variation selector beyond the basic plane", "A\U000E0100B" },
        { "last variation selector beyond the basic plane", "A\U000E01EF" },
        { "65 characters", new string('A', 65) },
    };

    [Property]
    public Property Every_printable_text_of_1_to_64_characters_is_an_id_and_comes_back_unchanged() =>
        Prop.ForAll(AnyText.OfLength(64).ToArbitrary(), text =>
            PersonId.TryCreate(text, out PersonId id) && string.Equals(id.Value, text, StringComparison.Ordinal) && string.Equals(id.ToString(), text, StringComparison.Ordinal)
            && id == new PersonId(text) && !id.IsEmpty);

    [Property]
    public Property Any_text_is_accepted_or_refused_and_never_throws() =>
        Prop.ForAll(ArbMap.Default.ArbFor<string?>(), text =>
        {
            bool accepted = PersonId.TryCreate(text, out PersonId id);
            return accepted == !id.IsEmpty && (!accepted || string.Equals(id.Value, text, StringComparison.Ordinal));
        });

    [Theory]
    [MemberData(nameof(Refused))]
    public void An_id_that_is_not_printable_or_too_long_is_refused(string why, string text)
    {
        Assert.False(PersonId.TryCreate(text, out _), why);
        ArgumentException exception = Assert.Throws<ArgumentException>(() => new PersonId(text));
        Assert.DoesNotContain(exception.Message, c => char.IsControl(c) || c == '\u202e');
    }

    [Fact]
    public void Length_counts_characters_and_not_halves_of_pairs() =>
        Assert.True(PersonId.TryCreate(string.Concat(Enumerable.Repeat("\U0001F527", 64)), out _));

    [Fact]
    public void The_default_id_is_empty_text_and_not_equal_to_any_made_one()
    {
        Assert.True(default(PersonId).IsEmpty);
        Assert.Equal("", default(PersonId).Value);
        Assert.NotEqual(default, new PersonId("A"));
        Assert.NotEqual(new PersonId("a"), new PersonId("A"));
    }

    [Fact]
    public void Null_is_refused()
    {
        Assert.False(PersonId.TryCreate(null, out _));
        Assert.Throws<ArgumentNullException>(() => new PersonId(null!));
    }

    [Fact]
    public void Every_other_id_follows_the_same_rule()
    {
        Assert.Equal("x", new Role("x").Value);
        Assert.Equal("x", new Place("x").Value);
        Assert.Equal("x", new ToolId("x").Value);
        Assert.Equal("x", new KitId("x").Value);
        Assert.Equal("each", Unit.Each.ToString());
        Assert.Equal("piece", Unit.Piece.ToString());
        Assert.False(Role.TryCreate("a\n", out _));
        Assert.False(Place.TryCreate("a\n", out _));
        Assert.False(Unit.TryCreate("a\n", out _));
        Assert.False(ToolId.TryCreate("a\n", out _));
        Assert.False(KitId.TryCreate("a\n", out _));
        Assert.Throws<ArgumentException>(() => new ExternalId("a\n", "b"));
        Assert.Throws<ArgumentException>(() => new ExternalId("a", ""));
        Assert.Equal("a:b", new ExternalId("a", "b").ToString());
        Assert.True(default(ExternalId).IsEmpty);
    }
}
