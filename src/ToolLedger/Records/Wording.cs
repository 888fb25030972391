using System;
using System.Collections.Frozen;
using System.Collections.Generic;
using System.Text;

namespace ToolLedger.Records;

/// <summary>The sentences of a language: says a reason in the words given for its code.</summary>
/// <remarks>
/// A code without a sentence of its own is said in English. <c>{name}</c> stands for a value and <c>{name:line|lines}</c> for one of two words: the first where the value
/// is 1, the second for any other. Immutable and thread-safe.
/// </remarks>
public sealed class Wording
{
    private readonly FrozenDictionary<string, string> _sentences;

    /// <summary>Makes a wording.</summary>
    /// <param name="sentencesByCode">Sentences by <see cref="ReasonKind.Code"/>; <c>{name}</c> stands for a value, <c>{name:one|other}</c> for a word that goes with it.</param>
    /// <exception cref="ArgumentNullException">The dictionary is null.</exception>
    public Wording(IReadOnlyDictionary<string, string> sentencesByCode)
    {
        ArgumentNullException.ThrowIfNull(sentencesByCode);
        _sentences = sentencesByCode.ToFrozenDictionary(StringComparer.Ordinal);
    }

    /// <summary>The sentences the kinds themselves carry.</summary>
    public static Wording English { get; } = new(FrozenDictionary<string, string>.Empty);

    /// <summary>Says a reason: the sentence for its code with the values filled in.</summary>
    /// <param name="reason">The reason.</param>
    /// <returns>One line of text; characters that are not printable are escaped, a placeholder without a value stays as it is.</returns>
    /// <exception cref="ArgumentNullException">The reason is null.</exception>
    public string Say(Reason reason)
    {
        ArgumentNullException.ThrowIfNull(reason);
        string sentence = _sentences.GetValueOrDefault(reason.Code, reason.Kind.Sentence);
        if (reason.Values.Count == 0)
        {
            return SafeText.Escape(sentence);
        }

        var said = new StringBuilder(sentence.Length + 32);
        ReadOnlySpan<char> rest = sentence;
        while (!rest.IsEmpty)
        {
            int open = rest.IndexOf('{');
            int close = open < 0 ? -1 : rest[open..].IndexOf('}');
            if (close < 0)
            {
                said.Append(rest);
                break;
            }

            said.Append(rest[..open]).Append(ValueOf(reason, rest.Slice(open, close + 1)));
            rest = rest[(open + close + 1)..];
        }

        return SafeText.Escape(said.ToString());
    }

    private static string ValueOf(Reason reason, ReadOnlySpan<char> placeholder)
    {
        ReadOnlySpan<char> inside = placeholder[1..^1];
        int colon = inside.IndexOf(':');
        ReadOnlySpan<char> words = colon < 0 ? default : inside[(colon + 1)..];
        int bar = words.IndexOf('|');
        ReadOnlySpan<char> name = bar < 0 ? inside : inside[..colon];
        foreach (KeyValuePair<string, string> pair in reason.Values)
        {
            if (name.SequenceEqual(pair.Key))
            {
                return bar < 0 ? pair.Value : string.Equals(pair.Value, "1", StringComparison.Ordinal) ? words[..bar].ToString() : words[(bar + 1)..].ToString();
            }
        }

        return placeholder.ToString();
    }
}
