using System;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Records;

/// <summary>Characters that Unicode draws as nothing make two texts look alike that are not.</summary>
public sealed class InvisibleTextTests
{
    [Theory]
    [InlineData("\u034f")]
    [InlineData("\u115f")]
    [InlineData("\u1160")]
    [InlineData("\u17b4")]
    [InlineData("\u180c")]
    [InlineData("\u3164")]
    [InlineData("\ufe0f")]
    [InlineData("\uffa0")]
    [InlineData("\U000E0150")]
    public void A_name_or_a_mark_with_a_character_nobody_sees_is_refused(string invisible)
    {
        Assert.Throws<ArgumentException>(() => new Tool { Id = new ToolId("T1"), Description = "Torque" + invisible + "wrench" });
        Assert.Throws<ArgumentException>(() => new Tool { Id = new ToolId("T1"), Description = "Torque wrench", Mark = "WT-" + invisible });
        Assert.False(PersonId.TryCreate("P" + invisible + "1", out _));
    }

    [Theory]
    [InlineData("\u034f", "\\u{034F}")]
    [InlineData("\u3164", "\\u{3164}")]
    [InlineData("\U000E01EF", "\\u{E01EF}")]
    public void A_sentence_shows_such_a_character_as_its_number(string invisible, string shown) =>
        Assert.Equal($"The member \"a{shown}b\" is missing.", new Reason(RecordRules.MissingMember, ("member", "a" + invisible + "b")).ToString());
}
