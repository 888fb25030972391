using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using Xunit;

namespace ToolLedger.Tests.Architecture;

/// <summary>Folder, namespace and room are one thing, and names say something.</summary>
public sealed class LayoutTests
{
    private const string BadRoot = "ToolLedger.Tests.Architecture.BadHouse";

    private static readonly string[] RoomsAndAnnexes = [.. House.Rooms, .. House.Annexes];

    public static TheoryData<string> Packages => [.. House.Packages];

    [Theory]
    [MemberData(nameof(Packages))]
    public void Every_file_has_the_namespace_of_its_folder(string package) =>
        Breaches.None(SourceTree.FilesOutsideTheirNamespace(SourceFolder(package), package));

    [Fact]
    public void Every_file_of_the_domain_lies_in_a_room() => Breaches.None(SourceTree.FilesInNoRoom(SourceFolder("ToolLedger"), RoomsAndAnnexes));

    [Fact]
    public void Every_type_of_the_domain_lies_in_a_room() =>
        Breaches.None(NameCheck.NamespacesThatAreNoRoom(House.Load("ToolLedger"), House.Domain, RoomsAndAnnexes));

    [Fact]
    public void Every_room_has_its_folder_of_tests() => Breaches.None(SourceTree.RoomsWithoutTests(
        SourceFolder("ToolLedger"),
        Path.Combine(House.RootFolder(), "tests", "ToolLedger.Tests"),
        House.Rooms));

    /// <summary>Guards the other checks against looking at an assembly that holds nothing.</summary>
    [Fact]
    public void The_assembly_holds_exactly_the_rooms_that_have_a_folder()
    {
        IEnumerable<string> compiled = CompiledCode.TypesIn(House.Load("ToolLedger"), House.Domain)
            .Select(type => FlowCheck.RoomIndex(type, House.Domain))
            .Where(index => index >= 0)
            .Distinct()
            .Order()
            .Select(index => House.Rooms[index]);
        IEnumerable<string> folders = SourceTree.RoomsBuilt(SourceFolder("ToolLedger"), House.Rooms)
            .OrderBy(room => Array.IndexOf(House.Rooms, room));
        Assert.Equal(folders, compiled, StringComparer.Ordinal);
    }

    [Fact]
    public void No_type_is_named_like_a_namespace() =>
        Breaches.None(NameCheck.TypesNamedLikeANamespace(House.Packages.SelectMany(TypesOf), House.Rooms));

    [Theory]
    [MemberData(nameof(Packages))]
    public void No_type_has_an_empty_name(string package) => Breaches.None(NameCheck.EmptyNames(TypesOf(package)));

    [Fact]
    public void The_check_sees_a_file_with_the_namespace_of_another_folder() =>
        Breaches.ExactlyFor(["Records/WrongNamespace.cs"], Slashed(SourceTree.FilesOutsideTheirNamespace(BadFolder(), BadRoot)));

    [Fact]
    public void The_check_sees_a_file_in_no_room() =>
        Breaches.ExactlyFor(["Cellar/NoRoom.cs", "TopOfTheHouse.cs"], Slashed(SourceTree.FilesInNoRoom(BadFolder(), RoomsAndAnnexes)));

    [Fact]
    public void The_check_sees_a_namespace_that_is_no_room() => Breaches.ExactlyFor(
        [BadRoot + ".Cellar.NoRoom", BadRoot + ".TopOfTheHouse"],
        NameCheck.NamespacesThatAreNoRoom(typeof(LayoutTests).Assembly, BadRoot, RoomsAndAnnexes));

    [Fact]
    public void The_check_sees_a_room_without_tests() => Breaches.ExactlyFor(
        ["Interchange", "Kits", "Records"],
        SourceTree.RoomsWithoutTests(BadFolder(), Path.Combine(BadFolder(), ".."), House.Rooms));

    [Fact]
    public void The_check_sees_a_type_named_like_a_namespace() =>
        Breaches.ExactlyFor([BadRoot + ".Records.Kits"], NameCheck.TypesNamedLikeANamespace(BadTypes(), House.Rooms));

    [Fact]
    public void The_check_sees_names_that_say_nothing() => Breaches.ExactlyFor(
        typeof(BadHouse.Records.EmptyNames).GetNestedTypes(BindingFlags.NonPublic).Select(type => type.FullName!),
        NameCheck.EmptyNames(BadTypes()));

    private static IEnumerable<Type> TypesOf(string package) => CompiledCode.TypesIn(House.Load(package), package);

    private static IEnumerable<Type> BadTypes() => CompiledCode.TypesIn(typeof(LayoutTests).Assembly, BadRoot);

    private static IEnumerable<Breach> Slashed(IEnumerable<Breach> breaches) =>
        breaches.Select(breach => breach with { Subject = breach.Subject.Replace('\\', '/') });

    private static string SourceFolder(string package) => Path.Combine(House.RootFolder(), "src", package);

    private static string BadFolder() => Path.Combine(House.RootFolder(), "tests", "ToolLedger.Tests", "Architecture", "BadHouse");
}
