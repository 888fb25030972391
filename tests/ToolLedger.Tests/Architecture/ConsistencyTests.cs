using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using Xunit;

namespace ToolLedger.Tests.Architecture;

/// <summary>What holds for every type of every package.</summary>
public sealed class ConsistencyTests
{
    private const string BadRoot = "ToolLedger.Tests.Architecture.BadHouse";

    public static TheoryData<string> Packages => [.. House.Packages];

    [Theory]
    [MemberData(nameof(Packages))]
    public void Public_structs_are_readonly_and_equatable(string package) => Breaches.None(TypeCheck.LooseStructs(TypesOf(package)));

    [Theory]
    [MemberData(nameof(Packages))]
    public void Comparable_types_have_the_four_operators(string package) => Breaches.None(TypeCheck.ComparablesWithoutOperators(TypesOf(package)));

    [Theory]
    [MemberData(nameof(Packages))]
    public void No_static_can_be_assigned(string package) => Breaches.None(TypeCheck.AssignableStatics(TypesOf(package)));

    [Theory]
    [MemberData(nameof(Packages))]
    public void Every_public_member_is_documented(string package) =>
        Breaches.None(DocumentationCheck.For(House.Load(package)).Undocumented(TypesOf(package)));

    [Theory]
    [MemberData(nameof(Packages))]
    public void Every_public_class_says_whether_threads_may_share_it(string package) =>
        Breaches.None(DocumentationCheck.For(House.Load(package)).SilentAboutThreads(TypesOf(package)));

    [Fact]
    public void The_check_sees_loose_structs() => Breaches.ExactlyFor(
        [BadRoot + ".Records.LooseTypes+Changeable", BadRoot + ".Records.LooseTypes+Incomparable"],
        TypeCheck.LooseStructs(BadTypes()));

    [Fact]
    public void The_check_sees_a_comparable_without_operators() =>
        Breaches.ExactlyFor([BadRoot + ".Records.LooseTypes+HalfOrdered"], TypeCheck.ComparablesWithoutOperators(BadTypes()));

    [Fact]
    public void The_check_sees_static_state_however_it_is_written() => Breaches.ExactlyFor(
        new[] { "_count", "_countOfThread", "Happened", "Setting", "Text", "Elsewhere" }.Select(name => $"{BadRoot}.Records.StaticState.{name}"),
        TypeCheck.AssignableStatics(BadTypes()));

    [Fact]
    public void The_check_sees_members_without_a_summary_and_accepts_every_form_of_a_signature()
    {
        const string undocumented = BadRoot + ".Records.Undocumented";
        Breaches.ExactlyFor(
            [
                "T:" + undocumented,
                "F:" + undocumented + ".Field",
                "P:" + undocumented + ".Property",
                "M:" + undocumented + ".#ctor(System.Int32)",
                "E:" + undocumented + ".Happened",
                $"M:{undocumented}.op_LogicalNot({undocumented})",
                "M:" + undocumented + ".OnHappened(System.EventArgs)",
                "F:" + undocumented + ".Colour.Red",
            ],
            DocumentationCheck.For(Here).Undocumented(BadTypes()));
    }

    [Fact]
    public void The_check_sees_a_class_that_says_nothing_about_threads() =>
        Breaches.ExactlyFor(["T:" + BadRoot + ".Records.Undocumented"], DocumentationCheck.For(Here).SilentAboutThreads(BadTypes()));

    private static Assembly Here => typeof(ConsistencyTests).Assembly;

    private static IEnumerable<Type> TypesOf(string package) => CompiledCode.TypesIn(House.Load(package), package);

    private static IEnumerable<Type> BadTypes() => CompiledCode.TypesIn(Here, BadRoot);
}
