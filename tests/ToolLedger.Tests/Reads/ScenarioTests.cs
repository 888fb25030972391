using System.Linq;
using ToolLedger.Reads;
using Xunit;

namespace ToolLedger.Tests.Reads;

/// <summary>Scenarios of the trade as far as a session alone can tell them; what follows for lines is tested where lines are
/// concluded.</summary>
public sealed class ScenarioTests
{
    [Fact]
    public void S05_with_a_dead_antenna_and_no_control_tag_no_measurement_took_place()
    {
        ReadSession session = new SessionScene().Close();
        Assert.Equal(SessionState.Invalid, session.Health.State);
        Assert.False(session.IsUsable);
        Assert.Empty(session.Tags);
        Assert.Empty(session.LiveAntennas);
    }

    [Fact]
    public void S06_half_a_station_is_degraded_and_five_reads_are_one_antenna_and_one_pass()
    {
        SessionScene scene = new SessionScene().WithControl(1);
        for (int tool = 1; tool <= 12; tool++)
        {
            scene.With(SessionScene.Tool(tool), 1, 10, 20, 30, 40, 50);
        }

        ReadSession session = scene.Close();
        Assert.Equal(SessionState.Degraded, session.Health.State);
        Assert.Equal([new AntennaPort(1)], session.LiveAntennas);
        Assert.All(Enumerable.Range(1, 12), tool =>
        {
            TagEvidence evidence = session.Find(SessionScene.Tool(tool))!;
            Assert.Equal((5, 1, 1), (evidence.LookCount, evidence.AntennaCount, evidence.PassCount));
        });
    }

    [Fact]
    public void S13_a_bag_carried_past_without_a_session_leaves_proximity_notes_only()
    {
        var log = new ProximityLog(new StationId("R1"), new SessionPolicy());
        for (int tool = 1; tool <= 13; tool++)
        {
            log.Add(SessionScene.Read(SessionScene.Tool(tool), 1, 0.1), SessionScene.Start);
            log.Add(SessionScene.Read(SessionScene.Tool(tool), 1, 0.4), SessionScene.Start);
        }

        Assert.Equal(13, log.Notes.Count);
        Assert.All(log.Notes, note =>
        {
            Assert.Equal(1, note.LookCount);
            Assert.Equal((SessionScene.At(0.1), SessionScene.At(0.4)), (note.FirstSeen, note.LastSeen));
            Assert.Null(note.Session);
        });
    }

    [Fact]
    public void S20_a_batch_delivered_twice_is_two_reads_and_not_four()
    {
        SessionScene scene = new SessionScene().WithControls().With(SessionScene.Tool(7), 1, 20, 40).With(SessionScene.Tool(7), 1, 20, 40);
        ReadSession session = scene.Close();
        TagEvidence evidence = session.Find(SessionScene.Tool(7))!;
        Assert.Equal((2, 2L, 2L), (evidence.LookCount, evidence.AcceptedCount, evidence.RepeatCount));
    }

    [Fact]
    public void S15_a_tag_one_bit_away_is_another_tag()
    {
        ReadSession session = new SessionScene().WithControls().With(SessionScene.Tool(6), 1, 20).Close();
        Assert.Null(session.Find(SessionScene.Tool(7)));
    }
}
