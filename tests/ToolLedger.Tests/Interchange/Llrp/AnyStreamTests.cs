using System;
using System.Linq;
using FsCheck.Xunit;
using Xunit;

namespace ToolLedger.Tests.Interchange.Llrp;

/// <summary>The checks of the fuzz target, on published messages, on damaged ones and on random bytes.</summary>
public sealed class AnyStreamTests
{
    [Fact]
    public void Published_messages_pass_the_checks_of_the_fuzz_target()
    {
        foreach (LlrpVector vector in LlrpVector.Published.Concat(LlrpVector.Robustness))
        {
            AnyStream.Check([0x20, .. vector.Bytes]);
            AnyStream.Check([0xC5, .. vector.Bytes]);
        }
    }

    // A number of the parameters of fixed size in the form of those with a length: found by fuzzing.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void A_number_of_a_fixed_parameter_with_a_length_is_none_of_them(int length)
    {
        for (int type = 0; type < 128; type++)
        {
            byte[] frame = Frames.Report(Frames.Tag(Frames.Epc1, Frames.Sized(type, new byte[length]), Frames.Antenna(1), Frames.FirstUtc(Frames.T0)));
            AnyStream.Check([0x21, .. frame]);
            Assert.Contains(Decoded.InPieces(frame, 1_000), line => line.StartsWith("read ", StringComparison.Ordinal));
        }
    }

    [Property(MaxTest = 1_000)]
    public void Damaged_messages_pass_the_checks_of_the_fuzz_target(byte choice, uint which, uint place, byte value, byte cut)
    {
        LlrpVector vector = LlrpVector.Published[(int)(which % LlrpVector.Published.Count)];
        byte[] bytes = [choice, .. vector.Bytes];
        bytes[place % bytes.Length] = value;
        AnyStream.Check(bytes.AsSpan(0, Math.Max(1, bytes.Length - (cut % 4))));
    }
}
