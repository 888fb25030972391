using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace ToolLedger.Tests.Architecture;

/// <summary>Checks on the shape of types: value types, order, and static state.</summary>
internal static class TypeCheck
{
    private static readonly string[] OrderOperators = ["op_LessThan", "op_LessThanOrEqual", "op_GreaterThan", "op_GreaterThanOrEqual"];

    /// <summary>Public structs that are not readonly, or not equatable with themselves. Ref structs are exempt: they cannot be compared by an interface.</summary>
    public static IEnumerable<Breach> LooseStructs(IEnumerable<Type> types)
    {
        foreach (Type type in types.Where(type => type is { IsVisible: true, IsValueType: true, IsEnum: false, IsByRefLike: false }))
        {
            if (!type.IsDefined(typeof(IsReadOnlyAttribute), inherit: false))
            {
                yield return new Breach(type.FullName!, "a public struct is readonly.");
            }

            if (!type.GetInterfaces().Any(face => Is(face, typeof(IEquatable<>), type)))
            {
                yield return new Breach(type.FullName!, "a public struct implements IEquatable of itself.");
            }
        }
    }

    /// <summary>Comparable types that lack one of the four order operators.</summary>
    public static IEnumerable<Breach> ComparablesWithoutOperators(IEnumerable<Type> types) =>
        from type in types
        where !type.IsInterface && type.GetInterfaces().Any(face => Is(face, typeof(IComparable<>), type))
        from name in OrderOperators
        where type.GetMethod(name, BindingFlags.Public | BindingFlags.Static, [type, type]) is null
        select new Breach(type.FullName!, $"a comparable type has {name}.");

    /// <summary>Static fields that can be assigned after the type is made, and static properties and events that can. What a compiler adds is exempt.</summary>
    public static IEnumerable<Breach> AssignableStatics(IEnumerable<Type> types)
    {
        const BindingFlags statics = BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;
        foreach (Type type in types.Where(type => !NameCheck.IsMadeByACompiler(type)))
        {
            // The field behind a property is judged as the property; other names no programmer can write are caches of lambdas.
            IEnumerable<string> names = type.GetFields(statics)
                .Where(field => !field.IsInitOnly && !field.IsLiteral)
                .Select(field => BehindAProperty(field.Name))
                .Where(name => !name.Contains('<', StringComparison.Ordinal))
                .Concat(type.GetProperties(statics).Where(property => property.SetMethod is not null).Select(property => property.Name));
            foreach (string name in names.Distinct(StringComparer.Ordinal))
            {
                yield return new Breach($"{type.FullName}.{name}", "static state can be assigned.");
            }
        }
    }

    private static string BehindAProperty(string field) => field.StartsWith('<') && field.EndsWith(">k__BackingField", StringComparison.Ordinal)
        ? field[1..field.IndexOf('>', StringComparison.Ordinal)]
        : field;

    private static bool Is(Type face, Type generic, Type argument) =>
        face.IsConstructedGenericType && face.GetGenericTypeDefinition() == generic && face.GetGenericArguments()[0] == argument;
}
