using System;
using System.Linq;

namespace ToolLedger.Interchange;

/// <summary>What a master inventory list calls its columns: nothing is guessed, so every column to be used is named here.</summary>
/// <remarks>
/// Each is null, which is the default, if the list has no such column; a column that is named must be there. Names are compared
/// character by character. Changed with <c>with</c>; equal when every name is. Immutable and thread-safe.
/// </remarks>
public sealed record MasterListColumns
{
    /// <summary>The most characters a name can have.</summary>
    public const int MaxNameLength = 128;

    /// <summary>The library's own form: every column, named as the members of a stored manifest.</summary>
    public static MasterListColumns All { get; } = new()
    {
        Line = "line",
        Kind = "kind",
        Location = "location",
        Tool = "tool",
        Description = "description",
        Mark = "mark",
        Pieces = "pieces",
        NeedsCalibration = "needsCalibration",
        ToolClass = "toolClass",
        SegregationClass = "segregationClass",
        Quantity = "quantity",
        Unit = "unit",
        Contents = "contents",
        Total = "total",
        SubKit = "subKit",
        SubKitRevision = "subKitRevision",
    };

    /// <summary>The number of the line. Without it the rows are numbered from 1 upward, bad ones too.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Line { get; init => field = Check(value); }

    /// <summary>What kind of line it is, in the words of <see cref="MasterListOptions.KindWords"/>. Without it every row is a single tool.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Kind { get; init => field = Check(value); }

    /// <summary>The drawer or place.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Location { get; init => field = Check(value); }

    /// <summary>The id of the tool, of a set's container, or of a sub-kit's case.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Tool { get; init => field = Check(value); }

    /// <summary>What it is: the tool, the container, the case, or the item that is counted.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Description { get; init => field = Check(value); }

    /// <summary>The mark of the tool, container or case.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Mark { get; init => field = Check(value); }

    /// <summary>Of how many pieces the tool, container or case is. It must be stated, unless <see cref="MasterListOptions.PiecesNotStatedMeansOne"/> is set.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Pieces { get; init => field = Check(value); }

    /// <summary>Whether the tool measures, in the words of <see cref="MasterListOptions.TrueWord"/> and <see cref="MasterListOptions.FalseWord"/>.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? NeedsCalibration { get; init => field = Check(value); }

    /// <summary>The class of tool.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? ToolClass { get; init => field = Check(value); }

    /// <summary>The class within which tools may be swapped.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? SegregationClass { get; init => field = Check(value); }

    /// <summary>How many of a counted item. For a line of another kind it must be 1, where it is given.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Quantity { get; init => field = Check(value); }

    /// <summary>The unit of the quantity. For a line of another kind it must be "each", where it is given.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Unit { get; init => field = Check(value); }

    /// <summary>What the container of a set holds.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Contents { get; init => field = Check(value); }

    /// <summary>All items of a set, the container included.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? Total { get; init => field = Check(value); }

    /// <summary>The kit that a sub-kit line lists.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? SubKit { get; init => field = Check(value); }

    /// <summary>The revision of that kit's manifest.</summary>
    /// <value>1 to 128 characters, or null for none.</value>
    /// <exception cref="ArgumentException">It is set to no such name.</exception>
    public string? SubKitRevision { get; init => field = Check(value); }

    /// <summary>The names in the order of <see cref="MasterListColumn"/>.</summary>
    internal string?[] Names =>
    [
        Line, Kind, Location, Tool, Description, Mark, Pieces, NeedsCalibration,
        ToolClass, SegregationClass, Quantity, Unit, Contents, Total, SubKit, SubKitRevision,
    ];

    /// <summary>The name that two columns share, or null.</summary>
    internal string? Repeated => Names.OfType<string>().GroupBy(static name => name, StringComparer.Ordinal).FirstOrDefault(static group => group.Count() > 1)?.Key;

    private static string? Check(string? name) => name is null || name.Length is > 0 and <= MaxNameLength
        ? name
        : throw new ArgumentException("A column has a name of 1 to 128 characters.", nameof(name));
}
