using System;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Records;

public sealed class SignatureTests
{
    private static readonly DateTimeOffset Noon = new(2026, 3, 1, 12, 0, 0, TimeSpan.FromHours(1));

    [Fact]
    public void A_signature_needs_a_person() =>
        Assert.Throws<ArgumentException>(() => new Signature { By = default, At = Noon });

    [Theory]
    [InlineData(1969)]
    [InlineData(3000)]
    [InlineData(9999)]
    public void A_signature_outside_1970_to_2999_is_refused(int year) => Assert.Throws<ArgumentOutOfRangeException>(() =>
        new Signature { By = new PersonId("p-1"), At = new DateTimeOffset(year, 6, 1, 0, 0, 0, TimeSpan.Zero) });

    [Fact]
    public void Signatures_are_equal_by_value()
    {
        var signature = new Signature { By = new PersonId("p-1"), At = Noon, Role = new Role("custodian") };
        Assert.Equal(signature, new Signature { By = new PersonId("p-1"), At = Noon, Role = new Role("custodian") });
        Assert.NotEqual(signature, new Signature { By = new PersonId("p-1"), At = Noon });
        Assert.NotEqual(signature, new Signature { By = new PersonId("p-2"), At = Noon, Role = new Role("custodian") });
        Assert.Equal("p-1 (custodian) at 2026-03-01T12:00:00+01:00", signature.ToString());
    }
}
