using System;
using ToolLedger.Reads;

namespace ToolLedger.Interchange;

/// <summary>How to read a file of reads. The defaults fit the library's own form.</summary>
/// <remarks>Changed with <c>with</c>. Immutable and thread-safe.</remarks>
public sealed record ReadFileOptions
{
    /// <summary>The form for keeping reads: tags as text that says their kind, so that a file holds every kind of tag; everything else as in the defaults.</summary>
    public static ReadFileOptions Archive { get; } = new() { TagForm = ReadTagForm.TagIdText };

    /// <summary>What the file calls its columns or members.</summary>
    /// <exception cref="ArgumentNullException">It is set to null.</exception>
    public ReadColumns Columns { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = new();

    /// <summary>How it writes instants. The default is RFC 3339 with an offset.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such form.</exception>
    public ReadTimeForm TimeForm
    {
        get;
        init => field = Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "There is no such form.");
    }

    /// <summary>The site whose clocks local times are of; null where the file writes instants.</summary>
    /// <value>Needed for <see cref="ReadTimeForm.Iso8601Local"/> and refused with other forms when the options are used: a file has local times or it has not.
    /// The default is null.</value>
    public SiteCalendar? Calendar { get; init; }

    /// <summary>How it writes tags. The default is EPC digits.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such form.</exception>
    public ReadTagForm TagForm
    {
        get;
        init => field = Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "There is no such form.");
    }

    /// <summary>What separates the columns of a CSV file.</summary>
    /// <value>An ASCII character that is no letter, digit, quotation mark, line end, or one of <c>+ - . :</c>. The default is a comma.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set to another character.</exception>
    public char Delimiter
    {
        get;
        init => field = char.IsAscii(value) && !char.IsAsciiLetterOrDigit(value) && !"\"\r\n+-.:".Contains(value, StringComparison.Ordinal)
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "This character cannot separate columns.");
    }
    = ',';

    /// <summary>The most bytes of one line, its line end not counted. A longer line is a bad row.</summary>
    /// <value>64 to 16,777,216 bytes. The default is 65,536.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public int LineLengthMax
    {
        get;
        init => field = value is >= 64 and <= 16_777_216 ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "A line is at most 64 to 16,777,216 bytes.");
    }
    = 65_536;

    /// <summary>Whether the first bad row ends the reading with a <see cref="ReadFileException"/>. The default is no, if
    /// somebody is told of bad rows; without anybody to tell, the first bad row always ends it.</summary>
    public bool StopAtBadRow { get; init; }

    /// <summary>How many bad rows are taken; one more ends the reading with a <see cref="ReadFileException"/>.</summary>
    /// <value>0 or more; null for any number, which is the default.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set below 0.</exception>
    public long? BadRowMax
    {
        get;
        init => field = value is null or >= 0 ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "The number of bad rows is 0 or more.");
    }

    /// <summary>The options, or the library's own form; throws where the declarations contradict each other.</summary>
    internal static ReadFileOptions Checked(ReadFileOptions? options)
    {
        options ??= new ReadFileOptions();
        return (options.TimeForm == ReadTimeForm.Iso8601Local) == (options.Calendar is not null)
            ? options
            : throw new ArgumentException("Local times and a calendar go together: each needs the other.", nameof(options));
    }
}
