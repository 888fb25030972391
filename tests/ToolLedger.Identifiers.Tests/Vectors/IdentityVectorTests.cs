using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace ToolLedger.Identifiers.Tests.Vectors;

/// <summary>Published pure identities with their element strings and Digital Links, in both directions.</summary>
public sealed class IdentityVectorTests
{
    private static readonly IReadOnlyList<IReadOnlyDictionary<string, string>> Rows = VectorFile.Read("identity.tsv");

    [Fact]
    public void The_file_has_all_vectors() => Assert.Equal(79, Rows.Count);

    [Fact]
    public void Pure_identity_element_string_and_digital_link_are_views_of_one_identity() => ForEach.Row(Rows, row =>
    {
        Assert.True(EpcIdentity.TryParseUri(row["pureIdentity"].AsSpan(), out EpcIdentity identity, out EpcFault fault), fault.ToString());
        Assert.Equal(row["pureIdentity"], identity.ToUri());
        Gs1Views.Check(row, identity);
    });

    [Fact]
    public void The_kinds_without_a_tag_coding_are_among_them() => Assert.Superset(
        new HashSet<string>(["ginc", "gsin", "pgln", "upui"], StringComparer.Ordinal),
        new HashSet<string>(Rows.Select(r => r["pureIdentity"].Split(':')[3]), StringComparer.Ordinal));
}
