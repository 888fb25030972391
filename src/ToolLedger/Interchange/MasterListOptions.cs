using System;
using System.Collections.Generic;

namespace ToolLedger.Interchange;

/// <summary>How to read a master inventory list. The defaults fit the library's own form.</summary>
/// <remarks>Changed with <c>with</c>. Immutable and thread-safe as far as the words handed in are left alone.</remarks>
public sealed record MasterListOptions
{
    /// <summary>What the list calls its columns. The default is <see cref="MasterListColumns.All"/>.</summary>
    /// <exception cref="ArgumentNullException">It is set to null.</exception>
    /// <exception cref="ArgumentException">Two columns have one name.</exception>
    public MasterListColumns Columns
    {
        get;
        init => field = value is null ? throw new ArgumentNullException(nameof(value))
            : value.Repeated is { } name ? throw new ArgumentException($"The name \"{name}\" is given to two columns.", nameof(value))
            : value;
    }
    = MasterListColumns.All;

    /// <summary>The list's words for the kinds of line, and what each means: tool, set, counted, consumable or sub-kit. The default is these words themselves.</summary>
    /// <remarks>Compared character by character. A word that is not among them makes a bad row.</remarks>
    /// <exception cref="ArgumentNullException">It is set to null.</exception>
    /// <exception cref="ArgumentException">A meaning is none of the five.</exception>
    public IReadOnlyDictionary<string, string> KindWords
    {
        get;
        init => field = Copy(value);
    }
    = Copy(OwnWords());

    /// <summary>The word that says that a tool needs calibration. The default is "true".</summary>
    /// <exception cref="ArgumentException">It is set to null or an empty text.</exception>
    public string TrueWord { get; init => field = Word(value); } = "true";

    /// <summary>The word that says that a tool needs no calibration, as an empty field does. The default is "false".</summary>
    /// <exception cref="ArgumentException">It is set to null or an empty text.</exception>
    public string FalseWord { get; init => field = Word(value); } = "false";

    /// <summary>Whether a tool, container or case whose number of pieces is not stated is of one piece.</summary>
    /// <value>The default is false: such a row is not understood, as in a stored manifest.</value>
    public bool PiecesNotStatedMeansOne { get; init; }

    /// <summary>What separates the columns.</summary>
    /// <value>As <see cref="ReadFileOptions.Delimiter"/>. The default is a comma.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set to a character that cannot separate columns.</exception>
    public char Delimiter { get; init => field = new ReadFileOptions { Delimiter = value }.Delimiter; } = ',';

    /// <summary>The most bytes of one line, its line end not counted. A longer line is a bad row.</summary>
    /// <value>64 to 16,777,216 bytes. The default is 65,536.</value>
    /// <exception cref="ArgumentOutOfRangeException">It is set out of range.</exception>
    public int LineLengthMax { get; init => field = new ReadFileOptions { LineLengthMax = value }.LineLengthMax; } = 65_536;

    private static string Word(string value) => string.IsNullOrEmpty(value) ? throw new ArgumentException("A word is not empty.", nameof(value)) : value;

    private static Dictionary<string, string> OwnWords() => new(StringComparer.Ordinal)
    {
        ["tool"] = "tool",
        ["set"] = "set",
        ["counted"] = "counted",
        ["consumable"] = "consumable",
        ["sub-kit"] = "sub-kit",
    };

    private static System.Collections.ObjectModel.ReadOnlyDictionary<string, string> Copy(IReadOnlyDictionary<string, string> words)
    {
        ArgumentNullException.ThrowIfNull(words);
        Dictionary<string, string> own = OwnWords();
        var copy = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach ((string word, string meaning) in words)
        {
            copy[word] = own.ContainsKey(meaning) ? meaning : throw new ArgumentException($"\"{meaning}\" is no kind of line.", nameof(words));
        }

        return copy.AsReadOnly();
    }
}
