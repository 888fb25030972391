using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;

namespace ToolLedger.Tests.Architecture;

/// <summary>
/// Reads what a built assembly really uses: base types, interfaces, constraints, fields, signatures, attributes with their
/// arguments, and method bodies. Source text is not asked, because a relative name hides a use there. A constant leaves no trace in
/// compiled code; <see cref="SourceTree.ForwardUsings"/> looks for those.
/// </summary>
internal static class CompiledCode
{
    private const BindingFlags Declared =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    /// <summary>The types of an assembly at or below a namespace, nested ones included.</summary>
    public static IEnumerable<Type> TypesIn(Assembly assembly, string rootNamespace) =>
        assembly.GetTypes().Where(type => IsInside(NamespaceOf(type), rootNamespace));

    /// <summary>The namespace of the outermost type around a type; empty for the global one.</summary>
    public static string NamespaceOf(Type type) => Outermost(type).Namespace ?? "";

    /// <summary>Whether a namespace is the root or lies below it.</summary>
    public static bool IsInside(string name, string rootNamespace) =>
        name.Equals(rootNamespace, StringComparison.Ordinal) || name.StartsWith(rootNamespace + ".", StringComparison.Ordinal);

    /// <summary>Every use of a type by a type at or below a namespace, each once.</summary>
    public static IReadOnlyList<TypeUse> UsesIn(Assembly assembly, string rootNamespace)
    {
        HashSet<TypeUse> uses = [];
        foreach (Type type in TypesIn(assembly, rootNamespace))
        {
            foreach ((string member, Type used) in UsesBy(type))
            {
                foreach (Type part in Parts(used))
                {
                    uses.Add(new TypeUse(Written(type), member, part));
                }
            }
        }

        return [.. uses];
    }

    private static IEnumerable<(string Member, Type Used)> UsesBy(Type type)
    {
        IEnumerable<Type> own = type.GetInterfaces()
            .Concat(type.BaseType is null ? [] : [type.BaseType])
            .Concat(Constraints(type.GetGenericArguments()))
            .Concat(AttributeTypes(type.GetCustomAttributesData()));
        IEnumerable<(string, Type)> members = type.GetMembers(Declared)
            .Where(member => member is not Type)
            .SelectMany(member => UsesBy(member).Select(used => (member.Name, used)));
        return own.Select(used => ("declaration", used)).Concat(members);
    }

    private static IEnumerable<Type> UsesBy(MemberInfo member)
    {
        IEnumerable<Type> declared = member switch
        {
            FieldInfo field => [field.FieldType],
            EventInfo { EventHandlerType: { } handler } => [handler],
            PropertyInfo property => [property.PropertyType],
            MethodBase method => Signature(method)
                .Concat(Constraints(method.IsGenericMethodDefinition ? method.GetGenericArguments() : []))
                .Concat(method.GetParameters().SelectMany(parameter => AttributeTypes(parameter.GetCustomAttributesData())))
                .Concat(method is MethodInfo info ? AttributeTypes(info.ReturnParameter.GetCustomAttributesData()) : [])
                .Concat(MethodBodies.TypesUsedBy(method)),
            _ => [],
        };
        return declared.Concat(AttributeTypes(member.GetCustomAttributesData()));
    }

    /// <summary>The types in the signature of a method: parameters, result and its own type arguments.</summary>
    public static IEnumerable<Type> Signature(MethodBase method) =>
        method.GetParameters().Select(parameter => parameter.ParameterType)
            .Concat(method is MethodInfo info ? [info.ReturnType] : [])
            .Concat(method.IsGenericMethod ? method.GetGenericArguments() : []);

    private static IEnumerable<Type> Constraints(IEnumerable<Type> arguments) =>
        arguments.Where(argument => argument.IsGenericParameter)
            .SelectMany(argument => argument.GetGenericParameterConstraints().Concat(AttributeTypes(argument.GetCustomAttributesData())));

    private static IEnumerable<Type> AttributeTypes(IEnumerable<CustomAttributeData> attributes) =>
        attributes.SelectMany(attribute =>
            attribute.ConstructorArguments.Concat(attribute.NamedArguments.Select(named => named.TypedValue))
                .SelectMany(ArgumentTypes)
                .Append(attribute.AttributeType));

    private static IEnumerable<Type> ArgumentTypes(CustomAttributeTypedArgument argument) => argument.Value switch
    {
        Type type => [argument.ArgumentType, type],
        IEnumerable<CustomAttributeTypedArgument> items => items.SelectMany(ArgumentTypes).Append(argument.ArgumentType),
        _ => [argument.ArgumentType],
    };

    /// <summary>Takes an array, a reference, a constructed generic or a function pointer apart into the plain types it is made of.</summary>
    private static IEnumerable<Type> Parts(Type type)
    {
        if (type.IsGenericParameter)
        {
            return [];
        }

        if (type.HasElementType)
        {
            return Parts(type.GetElementType()!);
        }

        if (type.IsFunctionPointer)
        {
            return type.GetFunctionPointerParameterTypes().Append(type.GetFunctionPointerReturnType()).SelectMany(Parts);
        }

        IEnumerable<Type> arguments = type.IsConstructedGenericType ? type.GetGenericArguments().SelectMany(Parts) : [];
        return arguments.Append(Outermost(type));
    }

    /// <summary>The type a person wrote around one that a compiler made for a lambda, an iterator or an async method.</summary>
    private static Type Written(Type type)
    {
        while (type.Name.Contains('<', StringComparison.Ordinal) && type.DeclaringType is { } outer)
        {
            type = outer;
        }

        return type;
    }

    private static Type Outermost(Type type)
    {
        while (type.DeclaringType is { } outer)
        {
            type = outer;
        }

        return type.IsConstructedGenericType ? type.GetGenericTypeDefinition() : type;
    }
}
