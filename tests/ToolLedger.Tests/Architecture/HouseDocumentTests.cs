using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using Xunit;

namespace ToolLedger.Tests.Architecture;

/// <summary>The table of rooms in <c>docs/house.md</c> is the one the tests hold, and says truly which rooms stand.</summary>
public sealed partial class HouseDocumentTests
{
    [Fact]
    public void The_table_of_rooms_is_the_list_that_the_tests_hold() =>
        Assert.Equal(House.Rooms, Table().Select(row => row.Room), StringComparer.Ordinal);

    [Fact]
    public void The_table_says_which_rooms_are_built()
    {
        IEnumerable<string> built = SourceTree.RoomsBuilt(Path.Combine(House.RootFolder(), "src", "ToolLedger"), House.Rooms);
        Assert.Equal(
            built.OrderBy(room => Array.IndexOf(House.Rooms, room)),
            Table().Where(row => row.IsBuilt).Select(row => row.Room),
            StringComparer.Ordinal);
    }

    private static IEnumerable<(string Room, bool IsBuilt)> Table()
    {
        string text = File.ReadAllText(Path.Combine(House.RootFolder(), "docs", "house.md")).ReplaceLineEndings("\n");
        int heading = text.IndexOf("| room |", StringComparison.Ordinal);
        return Row().Matches(text[heading..]).Select(match => (match.Groups["room"].Value, match.Groups["built"].Value.Trim().Length > 0));
    }

    [GeneratedRegex(@"^\| `(?<room>\w+)` \|[^|\n]*\|(?<built>[^|\n]*)\|$", RegexOptions.Multiline | RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Row();
}
