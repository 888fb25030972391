using System;
using System.Linq;
using ToolLedger.Records;
using ToolLedger.Tools;
using Xunit;

namespace ToolLedger.Tests.Tools;

public sealed class ToolTests
{
    [Fact]
    public void A_tool_is_of_one_piece_needs_no_calibration_and_has_no_mark_unless_stated()
    {
        var tool = new Tool { Id = new ToolId("T1"), Description = "spanner 13 mm" };
        Assert.Equal(1, tool.PieceCount);
        Assert.False(tool.NeedsCalibration);
        Assert.Null(tool.Mark);
        Assert.Null(tool.ToolClass);
        Assert.Empty(tool.ExternalIds);
        Assert.Equal("T1 spanner 13 mm", tool.ToString());
    }

    [Fact]
    public void A_tool_without_id_or_description_or_with_a_bad_text_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new Tool { Id = default, Description = "a" });
        Assert.Throws<ArgumentException>(() => new Tool { Id = new ToolId("T1"), Description = "" });
        Assert.Throws<ArgumentNullException>(() => new Tool { Id = new ToolId("T1"), Description = null! });
        Assert.Throws<ArgumentException>(() => new Tool { Id = new ToolId("T1"), Description = new string('a', 201) });
        Assert.Throws<ArgumentException>(() => new Tool { Id = new ToolId("T1"), Description = "a", Mark = new string('a', 33) });
        Assert.Throws<ArgumentException>(() => new Tool { Id = new ToolId("T1"), Description = "a", ToolClass = "a\t" });
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(100)]
    public void A_tool_has_1_to_99_pieces(int count) => Assert.Throws<ArgumentOutOfRangeException>(() =>
        new Tool { Id = new ToolId("T1"), Description = "a", PieceCount = count });

    [Fact]
    public void External_ids_are_copied_and_at_most_16_none_empty_none_twice()
    {
        ExternalId[] ids = [new("asset", "1"), new("part", "2")];
        Tool tool = With(ids);
        ids[0] = new ExternalId("asset", "changed");
        Assert.Equal("1", tool.ExternalIds[0].Value);
        Assert.Throws<ArgumentException>(() => With([default]));
        Assert.Throws<ArgumentException>(() => With([new("a", "1"), new("a", "1")]));
        Assert.Throws<ArgumentException>(() => With([.. Enumerable.Range(0, 17).Select(i => new ExternalId("a", $"{i}"))]));
    }

    private static Tool With(ExternalId[] ids) => new() { Id = new ToolId("T1"), Description = "a", ExternalIds = ids };
}
