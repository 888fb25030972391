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
}
