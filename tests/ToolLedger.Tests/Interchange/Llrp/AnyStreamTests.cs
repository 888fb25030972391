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

    [Property(MaxTest = 1_000)]
    public void Damaged_messages_pass_the_checks_of_the_fuzz_target(byte choice, uint which, uint place, byte value, byte cut)
    {
        LlrpVector vector = LlrpVector.Published[(int)(which % LlrpVector.Published.Count)];
        byte[] bytes = [choice, .. vector.Bytes];
        bytes[place % bytes.Length] = value;
        AnyStream.Check(bytes.AsSpan(0, Math.Max(1, bytes.Length - (cut % 4))));
    }
}
