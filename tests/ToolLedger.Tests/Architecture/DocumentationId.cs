using System;
using System.Globalization;
using System.Linq;
using System.Reflection;

namespace ToolLedger.Tests.Architecture;

/// <summary>
/// The id under which the compiler files a member's comment in the XML documentation (C# language specification, annex D.4.2
/// "ID string format", clause number from memory).
/// </summary>
internal static class DocumentationId
{
    public static string Of(Type type) => "T:" + Name(type);

    public static string Of(FieldInfo field) => $"F:{Name(field.DeclaringType!)}.{field.Name}";

    public static string Of(EventInfo happening) => $"E:{Name(happening.DeclaringType!)}.{happening.Name}";

    public static string Of(PropertyInfo property) =>
        $"P:{Name(property.DeclaringType!)}.{property.Name}{Parameters(property.GetIndexParameters())}";

    public static string Of(MethodBase method)
    {
        string name = method.IsConstructor ? (method.IsStatic ? "#cctor" : "#ctor") : method.Name;
        string arity = method.IsGenericMethod ? "``" + method.GetGenericArguments().Length.ToString(CultureInfo.InvariantCulture) : "";
        string result = method is MethodInfo { Name: "op_Implicit" or "op_Explicit" } conversion ? "~" + Reference(conversion.ReturnType) : "";
        return $"M:{Name(method.DeclaringType!)}.{name}{arity}{Parameters(method.GetParameters())}{result}";
    }

    private static string Name(Type type) => type.FullName!.Replace('+', '.');

    private static string Parameters(ParameterInfo[] parameters) =>
        parameters.Length == 0 ? "" : $"({string.Join(',', parameters.Select(parameter => Reference(parameter.ParameterType)))})";

    private static string Reference(Type type)
    {
        if (type.IsGenericParameter)
        {
            return (type.DeclaringMethod is null ? "`" : "``") + type.GenericParameterPosition.ToString(CultureInfo.InvariantCulture);
        }

        if (type.IsByRef)
        {
            return Reference(type.GetElementType()!) + "@";
        }

        if (type.IsPointer)
        {
            return Reference(type.GetElementType()!) + "*";
        }

        if (type.IsArray)
        {
            int rank = type.GetArrayRank();
            return Reference(type.GetElementType()!) + (rank == 1 ? "[]" : $"[{string.Join(',', Enumerable.Repeat("0:", rank))}]");
        }

        return type.IsGenericType ? Constructed(type) : Name(type);
    }

    private static string Constructed(Type type)
    {
        Type[] arguments = type.GetGenericArguments();
        string prefix = type.DeclaringType is { } outer
            ? outer.IsGenericType ? Constructed(outer.MakeGenericType(arguments[..outer.GetGenericArguments().Length])) + "." : Name(outer) + "."
            : type.Namespace + ".";
        int inherited = type.DeclaringType is { IsGenericType: true } generic ? generic.GetGenericArguments().Length : 0;
        string simple = type.Name.Split('`')[0];
        return arguments.Length == inherited
            ? prefix + simple
            : $"{prefix}{simple}{{{string.Join(',', arguments[inherited..].Select(Reference))}}}";
    }
}
