using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;

namespace ToolLedger.Tests.Architecture;

/// <summary>Checks the XML documentation that ships beside an assembly: an entry that says something for everything a user can see.</summary>
internal sealed class DocumentationCheck
{
    private const BindingFlags Declared =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    private readonly Dictionary<string, XElement> _entries;

    private DocumentationCheck(XDocument document) => _entries = document.Descendants("member")
        .Where(member => member.Attribute("name") is not null)
        .ToDictionary(member => member.Attribute("name")!.Value, StringComparer.Ordinal);

    /// <summary>Reads the XML file that lies beside an assembly.</summary>
    public static DocumentationCheck For(Assembly assembly) => new(XDocument.Load(Path.ChangeExtension(assembly.Location, ".xml")));

    /// <summary>Visible types and members without a summary.</summary>
    public IEnumerable<Breach> Undocumented(IEnumerable<Type> types) =>
        from type in types
        where type.IsVisible && !NameCheck.IsMadeByACompiler(type)
        from id in Ids(type)
        where !IsDocumented(id) && !IsPositionalProperty(type, id)
        select new Breach(id, "it is public and has no summary.");

    /// <summary>Public classes that do not say whether several threads may use one instance.</summary>
    public IEnumerable<Breach> SilentAboutThreads(IEnumerable<Type> types) =>
        from type in types
        where type is { IsVisible: true, IsClass: true } && !(type is { IsAbstract: true, IsSealed: true })
            && !typeof(Exception).IsAssignableFrom(type) && !typeof(Delegate).IsAssignableFrom(type) && !NameCheck.IsMadeByACompiler(type)
        let id = DocumentationId.Of(type)
        where !(_entries.TryGetValue(id, out XElement? entry) && entry.Value.Contains("thread", StringComparison.OrdinalIgnoreCase))
        select new Breach(id, "a public class says whether it is safe to use from several threads.");

    private static IEnumerable<string> Ids(Type type)
    {
        yield return DocumentationId.Of(type);
        if (typeof(Delegate).IsAssignableFrom(type))
        {
            yield break;
        }

        foreach (MemberInfo member in type.GetMembers(Declared).Where(member => !member.IsDefined(typeof(CompilerGeneratedAttribute), inherit: false)))
        {
            string? id = member switch
            {
                FieldInfo { IsSpecialName: false } field when IsSeen(field) => DocumentationId.Of(field),
                PropertyInfo property when property.GetAccessors(nonPublic: true).Any(IsSeen) => DocumentationId.Of(property),
                EventInfo happening when IsSeen(happening.AddMethod!) => DocumentationId.Of(happening),
                ConstructorInfo { IsStatic: false } made when IsSeen(made) && made.GetParameters().Length > 0 => DocumentationId.Of(made),
                MethodInfo method when IsSeen(method) && (!method.IsSpecialName || method.Name.StartsWith("op_", StringComparison.Ordinal)) =>
                    DocumentationId.Of(method),
                _ => null,
            };
            if (id is not null)
            {
                yield return id;
            }
        }
    }

    private static bool IsSeen(FieldInfo field) => field.IsPublic || field.IsFamily || field.IsFamilyOrAssembly;

    private static bool IsSeen(MethodBase method) => method.IsPublic || method.IsFamily || method.IsFamilyOrAssembly;

    private bool IsDocumented(string id) => _entries.TryGetValue(id, out XElement? entry)
        && (entry.Element("inheritdoc") is not null || !string.IsNullOrWhiteSpace(Text(entry.Element("summary"))));

    /// <summary>A positional record documents its properties by the parameters of the type.</summary>
    private bool IsPositionalProperty(Type type, string id) =>
        id.StartsWith("P:", StringComparison.Ordinal)
        && _entries.TryGetValue(DocumentationId.Of(type), out XElement? entry)
        && entry.Elements("param").Any(param =>
            id.EndsWith("." + (param.Attribute("name")?.Value ?? ""), StringComparison.Ordinal) && !string.IsNullOrWhiteSpace(Text(param)));

    /// <summary>The words of an element; a reference counts as one.</summary>
    private static string Text(XElement? element) =>
        element is null ? "" : element.Value + string.Concat(element.Descendants().Select(child => child.Attribute("cref")?.Value ?? ""));
}
