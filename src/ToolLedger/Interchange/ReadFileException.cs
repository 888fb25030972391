using System;

namespace ToolLedger.Interchange;

/// <summary>A file of reads could not be read any further.</summary>
public sealed class ReadFileException : FormatException
{
    /// <summary>Makes an exception without a row.</summary>
    public ReadFileException()
    {
    }

    /// <summary>Makes an exception without a row.</summary>
    /// <param name="message">The message.</param>
    public ReadFileException(string message)
        : base(message)
    {
    }

    /// <summary>Makes an exception without a row.</summary>
    /// <param name="message">The message.</param>
    /// <param name="innerException">What caused it.</param>
    public ReadFileException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    internal ReadFileException(BadRow row)
        : base(row.ToString()) => Row = row;

    /// <summary>The row that ended the reading.</summary>
    public BadRow? Row { get; }
}
