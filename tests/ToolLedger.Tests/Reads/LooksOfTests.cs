using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck.Xunit;
using ToolLedger.Reads;
using ToolLedger.Testing.Generators;
using Xunit;

namespace ToolLedger.Tests.Reads;

/// <summary>The looks one by one say the same as the cells that count them.</summary>
[Properties(Arbitrary = [typeof(AnyTagRead), typeof(AnyPresentation)], MaxTest = 200)]
public sealed class LooksOfTests
{
    [Property]
    public void The_looks_of_a_tag_are_counted_by_its_cells_with_and_without_saturation(Presentation presentation, TagRead[] reads, bool saturates)
    {
        var policy = new SessionPolicy { LooksKept = saturates ? 2 : 128 };
        var builder = new ReadSessionBuilder(presentation, policy);
        foreach (TagRead read in reads)
        {
            builder.Add(read);
        }

        ReadSession session = builder.Close(AnyTagRead.Start.AddSeconds(60), TimeSpan.Zero);
        foreach (TagEvidence evidence in session.Tags)
        {
            IReadOnlyList<Look> looks = session.LooksOf(evidence.Tag);

            Assert.Equal(
                evidence.Cells.Select(cell => (cell.Pass, cell.Antenna, cell.LookCount)),
                looks.GroupBy(look => (look.Pass, look.Antenna)).Select(cell => (cell.Key.Pass, cell.Key.Antenna, cell.Count())));
            Assert.Equal(looks.Distinct().OrderBy(look => look.Pass).ThenBy(look => look.Antenna).ThenBy(look => look.Slot), looks);
            Assert.All(looks, look => Assert.Equal(session.From + (look.Slot * policy.SlotLength), look.From));

            // A read behind the end of a session that was closed too early stays with the last pass, and speaks against the session.
            Assert.All(looks, look => Assert.Contains(
                session.Passes, pass => pass.Number == look.Pass && (look.From < pass.To || pass.To == session.To) && look.From + policy.SlotLength > pass.From));
        }
    }

    [Fact]
    public void A_look_stands_in_the_slot_of_its_read_and_a_second_read_of_the_slot_makes_no_second_look()
    {
        // Slots of half a second: 10.0 and 10.4 share one, 10.5 begins the next.
        ReadSession session = new SessionScene().WithControls().With(SessionScene.Tool(1), 2, 10.0, 10.4, 10.5).With(SessionScene.Tool(1), 1, 30.2).Close();

        Assert.Equal(
            [
                new Look(1, new AntennaPort(1), 60, SessionScene.At(30)),
                new Look(1, new AntennaPort(2), 20, SessionScene.At(10)),
                new Look(1, new AntennaPort(2), 21, SessionScene.At(10.5)),
            ],
            session.LooksOf(SessionScene.Tool(1)));
        Assert.Empty(session.LooksOf(SessionScene.Tool(2)));
    }

    // A pass that began at or after the end is none of the session's, but its looks keep it: and they make the session invalid, so that they settle nothing.
    [Property]
    public void A_look_of_a_pass_that_is_not_listed_lies_behind_the_end_of_an_invalid_session(Presentation presentation, TagRead[] reads, byte begins, byte ends)
    {
        var builder = new ReadSessionBuilder(presentation, new SessionPolicy());
        foreach (TagRead read in reads)
        {
            builder.Add(read);
        }

        DateTimeOffset last = presentation.PassStarts.Count == 0 ? presentation.From : presentation.PassStarts[^1];
        DateTimeOffset start = last.AddSeconds(1 + (begins % 20)), end = last.AddSeconds(1 + (ends % 20));
        if (start >= (presentation.Until ?? DateTimeOffset.MaxValue) || end > (presentation.Until ?? DateTimeOffset.MaxValue) || presentation.PassStarts.Count > 90)
        {
            return;
        }

        builder.BeginPass(start);
        ReadSession session = builder.Close(end, TimeSpan.Zero);
        Look[] unlisted = [.. session.Tags.SelectMany(tag => session.LooksOf(tag.Tag)).Where(look => session.Passes.All(pass => pass.Number != look.Pass))];

        Assert.Equal(end <= start, session.Passes.All(pass => pass.Number != presentation.PassStarts.Count + 2));
        Assert.All(unlisted, look => Assert.True(look.From + session.Policy.SlotLength > end));
        Assert.True(unlisted.Length == 0 || session.Health.Reasons.Any(static reason => reason.Kind == SessionReasons.ReadAfterClose));
        Assert.True(unlisted.Length == 0 || session.Health.State == SessionState.Invalid);
    }
}
