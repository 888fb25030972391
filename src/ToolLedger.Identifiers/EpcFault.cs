using System;
using System.Globalization;
using System.Runtime.InteropServices;

namespace ToolLedger.Identifiers;

/// <summary>Which rule an identifier breaks, in which field, where, and what was found there.</summary>
/// <remarks>The default value means that nothing is wrong. Immutable, and therefore safe for use by any number of threads.</remarks>
[StructLayout(LayoutKind.Auto)]
public readonly struct EpcFault : IEquatable<EpcFault>
{
    internal EpcFault(EpcRule rule, EpcField field, EpcPositionUnit unit, int position, ulong found)
    {
        Rule = rule;
        Field = field;
        PositionUnit = unit;
        Position = position;
        Found = found;
    }

    /// <summary>The rule; <see cref="EpcRule.None"/> when nothing is wrong.</summary>
    public EpcRule Rule { get; }

    /// <summary>The field; <see cref="EpcField.None"/> when it is none in particular.</summary>
    public EpcField Field { get; }

    /// <summary>What <see cref="Position"/> counts.</summary>
    public EpcPositionUnit PositionUnit { get; }

    /// <summary>The position, from 0: a bit of the EPC or a character of the text.</summary>
    public int Position { get; }

    /// <summary>What was found: the value of the bits, the code of the character, or a count, as the rule needs.</summary>
    public ulong Found { get; }

    /// <summary>Whether both faults are the same.</summary>
    /// <param name="other">The other fault.</param>
    /// <returns>The answer.</returns>
    public bool Equals(EpcFault other) =>
        Rule == other.Rule && Field == other.Field && PositionUnit == other.PositionUnit
        && Position == other.Position && Found == other.Found;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is EpcFault other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => ((int)Rule << 16) ^ ((int)Field << 8) ^ Position ^ Found.GetHashCode();

    /// <summary>A sentence with rule, field, position and what was found.</summary>
    /// <returns>The sentence; empty text when nothing is wrong.</returns>
    public override string ToString()
    {
        if (Rule == EpcRule.None)
        {
            return string.Empty;
        }

        string place = PositionUnit switch
        {
            EpcPositionUnit.Bit => string.Format(CultureInfo.InvariantCulture, " at bit {0}", Position),
            EpcPositionUnit.Character => string.Format(CultureInfo.InvariantCulture, " at character {0}", Position),
            _ => string.Empty,
        };
        string field = Field == EpcField.None ? string.Empty : string.Format(CultureInfo.InvariantCulture, " ({0})", Field);
        return string.Format(
            CultureInfo.InvariantCulture, "{0}{1}{2}; found {3}.", EpcRuleText.Sentence(Rule), place, field, FoundText());
    }

    /// <summary>Whether both faults are the same.</summary>
    /// <param name="left">One fault.</param>
    /// <param name="right">The other fault.</param>
    /// <returns>The answer.</returns>
    public static bool operator ==(EpcFault left, EpcFault right) => left.Equals(right);

    /// <summary>Whether the faults differ.</summary>
    /// <param name="left">One fault.</param>
    /// <param name="right">The other fault.</param>
    /// <returns>The answer.</returns>
    public static bool operator !=(EpcFault left, EpcFault right) => !left.Equals(right);

    private string FoundText()
    {
        if (Rule is EpcRule.HeaderAssigned or EpcRule.Programmed or EpcRule.SchemeRead)
        {
            return string.Format(CultureInfo.InvariantCulture, "{0:X2}h", Found);
        }

        if (!EpcRuleText.FindsCharacter(Rule))
        {
            return Found.ToString(CultureInfo.InvariantCulture);
        }

        // Control characters must not reach a terminal raw.
        return Found is > 0x20 and < 0x7F
            ? string.Format(CultureInfo.InvariantCulture, "'{0}'", (char)Found)
            : string.Format(CultureInfo.InvariantCulture, "character {0:X2}h", Found);
    }
}
