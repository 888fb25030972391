using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;

namespace ToolLedger.Records;

/// <summary>Why something was concluded or refused: a kind and the values that belong to it.</summary>
/// <remarks>
/// Two reasons are equal when their codes and their values (names, texts and order) are equal. Values are kept as given;
/// sentences made from them escape every character that is not printable. Immutable and thread-safe.
/// </remarks>
public sealed class Reason : IEquatable<Reason>
{
    private readonly ReadOnlyCollection<KeyValuePair<string, string>> _values;

    /// <summary>Makes a reason.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="values">Name and text of each value; a text is already formatted by the invariant culture.</param>
    /// <exception cref="ArgumentNullException">The kind, a name or a text is null.</exception>
    public Reason(ReasonKind kind, params ReadOnlySpan<(string Name, string Value)> values)
    {
        ArgumentNullException.ThrowIfNull(kind);
        Kind = kind;
        if (values.IsEmpty)
        {
            _values = ReadOnlyCollection<KeyValuePair<string, string>>.Empty;
            return;
        }

        var pairs = new KeyValuePair<string, string>[values.Length];
        for (int i = 0; i < pairs.Length; i++)
        {
            ArgumentNullException.ThrowIfNull(values[i].Name, nameof(values));
            ArgumentNullException.ThrowIfNull(values[i].Value, nameof(values));
            pairs[i] = new(values[i].Name, values[i].Value);
        }

        _values = Array.AsReadOnly(pairs);
    }

    /// <summary>The kind.</summary>
    public ReasonKind Kind { get; }

    /// <summary>The stable code of the kind.</summary>
    public string Code => Kind.Code;

    /// <summary>The values in the order given.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Values => _values;

    /// <inheritdoc/>
    public bool Equals(Reason? other)
    {
        if (other is null || !string.Equals(Code, other.Code, StringComparison.Ordinal) || _values.Count != other._values.Count)
        {
            return false;
        }

        for (int i = 0; i < _values.Count; i++)
        {
            if (!string.Equals(_values[i].Key, other._values[i].Key, StringComparison.Ordinal)
                || !string.Equals(_values[i].Value, other._values[i].Value, StringComparison.Ordinal))
            {
                return false;
            }
        }

        return true;
    }

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Reason);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        hash.Add(Code, StringComparer.Ordinal);
        foreach (KeyValuePair<string, string> pair in _values)
        {
            hash.Add(pair.Value, StringComparer.Ordinal);
        }

        return hash.ToHashCode();
    }

    /// <summary>The English sentence with the values filled in; characters that are not printable are escaped.</summary>
    /// <returns>One line of text.</returns>
    public override string ToString() => Wording.English.Say(this);
}
