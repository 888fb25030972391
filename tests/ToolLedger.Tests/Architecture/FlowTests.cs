using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using Xunit;

namespace ToolLedger.Tests.Architecture;

/// <summary>The rooms are built on each other in one order, and only one of them reads streams.</summary>
public sealed class FlowTests
{
    private const string BadRoot = "ToolLedger.Tests.Architecture.BadHouse";
    private const string BadRoom = BadRoot + ".Records.";

    public static TheoryData<string> Packages => [.. House.Packages];

    [Fact]
    public void No_room_uses_a_later_room() =>
        Breaches.None(FlowCheck.UsesOfLaterRooms(Uses("ToolLedger"), House.Domain));

    [Fact]
    public void No_file_has_a_using_for_a_later_room() =>
        Breaches.None(SourceTree.ForwardUsings(SourceFolder("ToolLedger"), House.Domain));

    [Theory]
    [MemberData(nameof(Packages))]
    public void Only_one_room_uses_streams_and_tasks(string package) =>
        Breaches.None(FlowCheck.StreamsOutsideTheStreamingRoom(Uses(package), House.Domain));

    [Theory]
    [MemberData(nameof(Packages))]
    public void No_package_touches_what_belongs_to_the_host(string package) => Breaches.None(FlowCheck.UsesOfTheHost(Uses(package)));

    [Theory]
    [MemberData(nameof(Packages))]
    public void Every_package_refers_only_to_what_it_may(string package) =>
        Breaches.None(FlowCheck.ForeignReferences(House.Load(package), House.Dependencies[package]));

    [Fact]
    public void The_check_sees_every_path_into_a_later_room()
    {
        IEnumerable<string> paths = typeof(BadHouse.Records.UsesLaterRooms)
            .GetNestedTypes(BindingFlags.NonPublic)
            .Where(type => !NameCheck.IsMadeByACompiler(type))
            .Select(type => type.FullName!);
        Breaches.ExactlyFor(paths, FlowCheck.UsesOfLaterRooms(BadUses(), BadRoot));
    }

    [Fact]
    public void The_check_sees_a_using_that_compiled_code_forgets()
    {
        Breaches.ExactlyFor(
            ["Records/UsesALaterConstant.cs", "Records/UsesLaterRooms.cs"],
            SourceTree.ForwardUsings(BadFolder(), BadRoot).Select(breach => breach with { Subject = breach.Subject.Replace('\\', '/') }));
    }

    [Fact]
    public void The_check_sees_streams_tasks_and_pipes_but_not_in_the_streaming_room()
    {
        IEnumerable<string> paths = typeof(BadHouse.Records.UsesStreams)
            .GetNestedTypes(BindingFlags.NonPublic)
            .Where(type => !NameCheck.IsMadeByACompiler(type))
            .Select(type => type.FullName!);
        Breaches.ExactlyFor(paths, FlowCheck.StreamsOutsideTheStreamingRoom(BadUses(), BadRoot));
    }

    [Fact]
    public void The_check_sees_files_consoles_networks_and_threads() => Breaches.ExactlyFor(
        ["ThroughConsole", "ThroughFile", "ThroughNetwork", "ThroughThread"],
        FlowCheck.UsesOfTheHost(BadUses())
            .Select(breach => breach with { Subject = breach.Subject.Replace(BadRoom + "UsesTheHost+", "", StringComparison.Ordinal) }));

    [Fact]
    public void The_check_sees_a_foreign_reference()
    {
        IEnumerable<string> foreign = FlowCheck.ForeignReferences(typeof(FlowTests).Assembly, House.Packages).Select(breach => breach.Subject);
        Assert.Contains("xunit.v3.assert", foreign, StringComparer.Ordinal);
        Assert.DoesNotContain(foreign, name => House.Packages.Contains(name, StringComparer.Ordinal) || name.StartsWith("System.", StringComparison.Ordinal));
    }

    private static IReadOnlyList<TypeUse> Uses(string package) => CompiledCode.UsesIn(House.Load(package), package);

    private static IReadOnlyList<TypeUse> BadUses() => CompiledCode.UsesIn(typeof(FlowTests).Assembly, BadRoot);

    private static string SourceFolder(string package) => System.IO.Path.Combine(House.RootFolder(), "src", package);

    private static string BadFolder() =>
        System.IO.Path.Combine(House.RootFolder(), "tests", "ToolLedger.Tests", "Architecture", "BadHouse");
}
