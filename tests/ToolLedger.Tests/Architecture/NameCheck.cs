using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace ToolLedger.Tests.Architecture;

/// <summary>Checks on names: of namespaces, and of types against them.</summary>
internal static class NameCheck
{
    private static readonly string[] EmptyWords = ["Util", "Utils", "Utility", "Utilities", "Helper", "Helpers", "Manager", "Service", "Common"];

    /// <summary>Hand-written types outside the root namespace's rooms and annexes.</summary>
    public static IEnumerable<Breach> NamespacesThatAreNoRoom(Assembly assembly, string rootNamespace, IReadOnlyCollection<string> rooms) =>
        from type in CompiledCode.TypesIn(assembly, rootNamespace)
        where !type.IsNested && !IsMadeByACompiler(type)
        let name = type.Namespace ?? ""
        where !rooms.Any(room => name.Equals(room.Length == 0 ? rootNamespace : rootNamespace + "." + room, StringComparison.Ordinal))
        select new Breach(type.FullName!, $"{name} is not in the list of rooms.");

    /// <summary>Types whose simple name is also a part of a namespace: their users meet CS0118.</summary>
    public static IEnumerable<Breach> TypesNamedLikeANamespace(IEnumerable<Type> types, IEnumerable<string> roomNames)
    {
        Type[] all = [.. types];
        HashSet<string> taken = new(all.SelectMany(type => (type.Namespace ?? "").Split('.')).Concat(roomNames), StringComparer.Ordinal);
        return all.Where(type => taken.Contains(SimpleName(type)))
            .Select(type => new Breach(type.FullName!, $"{SimpleName(type)} is also the name of a namespace."));
    }

    /// <summary>Types named for nothing in the trade: Utils, Helper, Manager, Service, Common.</summary>
    public static IEnumerable<Breach> EmptyNames(IEnumerable<Type> types) =>
        from type in types
        where !IsMadeByACompiler(type)
        from word in EmptyWords
        where SimpleName(type).EndsWith(word, StringComparison.Ordinal) || (type.Namespace ?? "").Split('.').Contains(word, StringComparer.Ordinal)
        select new Breach(type.FullName!, $"\"{word}\" says nothing about the job.");

    /// <summary>Whether a type, or one around it, was written by a compiler or a source generator.</summary>
    public static bool IsMadeByACompiler(Type type)
    {
        for (Type? at = type; at is not null; at = at.DeclaringType)
        {
            if (at.Name.Contains('<', StringComparison.Ordinal)
                || at.IsDefined(typeof(CompilerGeneratedAttribute), inherit: false)
                || at.GetCustomAttributesData().Any(data => data.AttributeType.FullName is "Microsoft.CodeAnalysis.EmbeddedAttribute"))
            {
                return true;
            }
        }

        return false;
    }

    private static string SimpleName(Type type)
    {
        int arity = type.Name.IndexOf('`', StringComparison.Ordinal);
        return arity < 0 ? type.Name : type.Name[..arity];
    }
}
