using System;

namespace ToolLedger.Records;

/// <summary>A kind of reason, refusal or finding: a stable code and the English sentence made from it.</summary>
/// <remarks>
/// Codes never change their meaning between versions; sentences may be reworded or translated (<see cref="Wording"/>).
/// Every room declares its kinds on one public static class. Immutable and thread-safe; compared by reference.
/// </remarks>
public sealed class ReasonKind
{
    /// <summary>Longest code, in characters.</summary>
    public const int MaxCodeLength = 64;

    /// <summary>Declares a kind.</summary>
    /// <param name="code">1 to 64 characters: lower-case ASCII words of letters and digits, joined by dots and hyphens.</param>
    /// <param name="sentence">An English sentence; <c>{name}</c> stands for the value of that name, <c>{name:line|lines}</c> for the first word where it is 1 and for the second otherwise.</param>
    /// <exception cref="ArgumentException">The code has another form, or the sentence is empty.</exception>
    public ReasonKind(string code, string sentence)
    {
        ArgumentNullException.ThrowIfNull(code);
        ArgumentException.ThrowIfNullOrWhiteSpace(sentence);
        if (!IsCode(code))
        {
            throw new ArgumentException("A code is 1 to 64 lower-case letters, digits, dots and hyphens, and starts and ends with a letter or digit.", nameof(code));
        }

        Code = code;
        Sentence = sentence;
    }

    /// <summary>The stable code, such as <c>manifest.same-tool-twice</c>.</summary>
    public string Code { get; }

    /// <summary>The English sentence with its placeholders.</summary>
    public string Sentence { get; }

    /// <summary>The code.</summary>
    /// <returns><see cref="Code"/>.</returns>
    public override string ToString() => Code;

    private static bool IsCode(string code)
    {
        if (code.Length is 0 or > MaxCodeLength || !IsWordCharacter(code[0]) || !IsWordCharacter(code[^1]))
        {
            return false;
        }

        foreach (char c in code)
        {
            if (!IsWordCharacter(c) && c is not ('.' or '-'))
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsWordCharacter(char c) => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c);
}
