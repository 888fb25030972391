using System;
using System.Collections.Generic;
using System.ComponentModel;
using System.Linq;
using System.Runtime.CompilerServices;
using ToolLedger.Tests.Architecture.BadHouse.Kits;

namespace ToolLedger.Tests.Architecture.BadHouse.Records;

/// <summary>Each nested type reaches into a later room by one path that compiled code can take.</summary>
internal static class UsesLaterRooms
{
    internal sealed class ThroughBaseType : Later.Thing;

    internal sealed class ThroughInterface : Later.IThing;

    internal sealed class ThroughConstraint<T>
        where T : Later.IThing;

    [Later.Mark]
    internal sealed class ThroughAttribute;

    [TypeConverter(typeof(Later))]
    internal sealed class ThroughAttributeArgument;

    internal sealed class ThroughGenericBase : List<Later.Number>;

    internal sealed class ThroughField
    {
        private readonly Later.Number[] _numbers = [];

        public object Numbers => _numbers;
    }

    internal sealed class ThroughParameter
    {
        public static void Take(IEnumerable<KeyValuePair<string, Later.Thing?>> things) => ArgumentNullException.ThrowIfNull(things);
    }

    internal sealed class ThroughParameterAttribute
    {
        public static void Take([Later.Mark] string text) => ArgumentNullException.ThrowIfNull(text);
    }

    internal sealed class ThroughResult
    {
        public static ref Later.Number Give(Span<byte> bytes) => ref Unsafe.As<byte, Later.Number>(ref bytes[0]);
    }

    internal sealed class ThroughEvent
    {
        public event Action<Later.Thing>? Happened;

        public void Happen() => Happened?.Invoke(null!);
    }

    internal sealed class ThroughBody
    {
        public static object Make() => new Later.Thing();
    }

    internal sealed class ThroughCall
    {
        public static int Length() => Later.Name.Length;
    }

    internal sealed class ThroughCast
    {
        public static bool Is(object value) => value is Later.IThing;
    }

    internal sealed class ThroughTypeOf
    {
        public static string Name() => typeof(Later).Name;
    }

    internal sealed class ThroughCatch
    {
        public static bool Try(Action act)
        {
            try
            {
                act();
                return true;
            }
            catch (Later.FaultException)
            {
                return false;
            }
        }
    }

    internal sealed class ThroughLambda
    {
        public static IEnumerable<string> Names(IEnumerable<int> numbers) => numbers.Select(number => Later.Name + number.ToString("D", null));
    }

    internal sealed class ThroughIterator
    {
        public static IEnumerable<object> Things()
        {
            yield return "first";
            yield return new Later.Thing();
        }
    }

    internal sealed class ThroughMethodArgument
    {
        public static int Size() => Unsafe.SizeOf<Later.Number>();
    }

    /// <summary>A switch has operands of many sizes; a reader that loses step in it misses the call at its end.</summary>
    internal sealed class ThroughTheEndOfASwitch
    {
        public static string Say(int number) => number switch
        {
            0 => "none",
            1 => "one",
            2 => (number * 3.5).ToString("R", null),
            3 => (number + 5_000_000_000L).ToString("D", null),
            4 => "four",
            _ => Later.Name,
        };
    }
}
