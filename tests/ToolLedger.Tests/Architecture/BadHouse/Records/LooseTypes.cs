using System;

namespace ToolLedger.Tests.Architecture.BadHouse.Records;

/// <summary>Public types of a shape that surprises their users.</summary>
public static class LooseTypes
{
    /// <summary>It can change where it stands.</summary>
    public struct Changeable : IEquatable<Changeable>
    {
        /// <summary>A number.</summary>
        public int Number { get; set; }

        /// <inheritdoc/>
        public readonly bool Equals(Changeable other) => Number == other.Number;

        /// <inheritdoc/>
        public override readonly bool Equals(object? obj) => obj is Changeable other && Equals(other);

        /// <inheritdoc/>
        public override readonly int GetHashCode() => Number;
    }

    /// <summary>It is compared by boxing and reflection.</summary>
    public readonly struct Incomparable
    {
        /// <summary>A number.</summary>
        public int Number { get; init; }
    }

    /// <summary>It has an order and no operators. It is immutable, so threads may share it.</summary>
    public sealed class HalfOrdered : IComparable<HalfOrdered>
    {
        /// <inheritdoc/>
        public int CompareTo(HalfOrdered? other) => other is null ? 1 : 0;
    }
}
