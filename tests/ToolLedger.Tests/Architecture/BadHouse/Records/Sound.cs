using System;
using System.Collections.Generic;
using System.Linq;

namespace ToolLedger.Tests.Architecture.BadHouse.Records;

/// <summary>Code that breaks no rule: no check may name it.</summary>
public static class Sound
{
    /// <summary>A constant.</summary>
    public const int Limit = 2;

    private static readonly int[] Numbers = [1, 2, 3];

    /// <summary>A property that cannot be assigned, with a lambda whose cache a compiler assigns.</summary>
    public static string Name { get; } = string.Concat(Numbers.Where(number => number > 1));

    /// <summary>A value with order, equality and operators.</summary>
    /// <param name="Number">Any number.</param>
    public readonly record struct Value(int Number) : IComparable<Value>
    {
        /// <inheritdoc/>
        public int CompareTo(Value other) => Number.CompareTo(other.Number);

        /// <summary>Order of numbers.</summary>
        public static bool operator <(Value left, Value right) => left.CompareTo(right) < 0;

        /// <summary>Order of numbers.</summary>
        public static bool operator <=(Value left, Value right) => left.CompareTo(right) <= 0;

        /// <summary>Order of numbers.</summary>
        public static bool operator >(Value left, Value right) => left.CompareTo(right) > 0;

        /// <summary>Order of numbers.</summary>
        public static bool operator >=(Value left, Value right) => left.CompareTo(right) >= 0;

        /// <summary>The number alone.</summary>
        public static explicit operator int(Value value) => value.Number;
    }

    /// <summary>A window on memory; it cannot implement an interface for comparison.</summary>
    public ref struct Window
    {
        /// <summary>What it shows.</summary>
        public ReadOnlySpan<byte> Bytes { get; set; }
    }

    /// <summary>Says that it is immutable, so any thread may use it.</summary>
    /// <typeparam name="T">What it holds.</typeparam>
    public sealed class Holder<T>
    {
        /// <summary>Holds something.</summary>
        public Holder(T[] items, IReadOnlyDictionary<string, List<T>> index, ref int count, int[,] table) =>
            count = items.Length + index.Count + table.Length;

        /// <summary>Something inside something generic.</summary>
        /// <remarks>Not for use by several threads at once.</remarks>
        public sealed class Inner
        {
            /// <summary>Its parameters name nested generic types.</summary>
            public static bool Same<TOther>(Inner left, Holder<TOther>.Inner right) => left.Equals(right);
        }

        /// <summary>An item by place.</summary>
        public T? this[int index] => index < 0 ? default : throw new ArgumentOutOfRangeException(nameof(index));
    }
}
