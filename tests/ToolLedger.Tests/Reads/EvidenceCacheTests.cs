using System.Linq;
using System.Threading.Tasks;
using ToolLedger.Identifiers;
using ToolLedger.Reads;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Reads;

/// <summary>A session of few tags keeps the evidence it made; that changes nothing but the work.</summary>
public sealed class EvidenceCacheTests
{
    // The documented limit of tags up to which a session keeps its evidence.
    private const int Kept = 4096;

    [Fact]
    public void Threads_that_ask_for_a_tag_at_once_get_one_and_the_same_evidence()
    {
        for (int round = 0; round < 50; round++)
        {
            ReadSession session = Session(20);
            var found = new TagEvidence?[64];
            Parallel.For(0, found.Length, i => found[i] = session.Find(Tag(7)));

            Assert.NotNull(found[0]);
            Assert.All(found, evidence => Assert.Same(found[0], evidence));
            Assert.Same(found[0], session.Tags.Single(evidence => evidence.Tag == Tag(7)));
        }
    }

    [Fact]
    public void A_session_of_more_tags_than_are_kept_says_the_same_of_each()
    {
        // The control tag is one of them.
        ReadSession few = Session(Kept - 1), many = Session(Kept);
        Assert.Equal((Kept, Kept + 1), (few.TagCount, many.TagCount));

        for (int number = 0; number < Kept - 1; number += 13)
        {
            Assert.Equal(EvidenceText.Of(few.Find(Tag(number))!), EvidenceText.Of(many.Find(Tag(number))!));
        }

        Assert.Same(few.Find(Tag(1)), few.Find(Tag(1)));
        Assert.NotSame(many.Find(Tag(1)), many.Find(Tag(1)));
        Assert.Null(few.Find(Tag(Kept + 5)));
    }

    private static ReadSession Session(int tags)
    {
        SessionScene scene = new SessionScene().WithControls();
        for (int number = 0; number < tags; number++)
        {
            scene.With(Tag(number), 1 + (number % 2), 5, 5 + (number % 40));
        }

        return scene.Close();
    }

    private static TagId Tag(int number) => TagId.FromEpc(Epc.Parse($"3034257BF7194E40{number:X8}"));
}
