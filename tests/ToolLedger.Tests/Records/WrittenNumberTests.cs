using System;
using System.Collections.Generic;
using System.Globalization;
using System.Numerics;
using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ToolLedger.Kits;
using ToolLedger.Policies;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Records;

/// <summary>A number of a record is taken as it is written, never as what it rounds to.</summary>
public sealed class WrittenNumberTests
{
    [Theory]
    [InlineData("5.99999999999999999999999999999999999")]
    [InlineData("6.0000000000000000000000000000000001")]
    [InlineData("600000000000000000000000000000000001e-35")]
    [InlineData("6.0001")]
    [InlineData("1e-999999999999")]
    public void A_quantity_of_more_than_three_decimals_is_refused_and_shown_as_written(string written)
    {
        Assert.False(KitManifest.TryParse(Manifest(written), out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Equal("$.lines[0].quantity record.out-of-range", $"{issues[0].Place} {issues[0].Rule}");
        Assert.Contains(written, issues[0].ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("6", "6")]
    [InlineData("6.0000000000000000000000000000000000", "6")]
    [InlineData("60e-1", "6")]
    [InlineData("0.6E+1", "6")]
    [InlineData("0.00000000000000000000000000000000006e35", "6")]
    [InlineData("1000000.000", "1000000")]
    [InlineData("0.125", "0.125")]
    public void Zeros_and_exponents_change_nothing(string written, string amount)
    {
        Assert.True(KitManifest.TryParse(Manifest(written), out KitManifest? manifest, out IReadOnlyList<RecordIssue> issues), string.Join("; ", issues));
        Assert.Equal(decimal.Parse(amount, CultureInfo.InvariantCulture), ((CountedLine)manifest.Lines[0]).Quantity.Amount);
    }

    [Fact]
    public void A_number_of_a_policy_is_not_rounded_either()
    {
        byte[] policy = Encoding.UTF8.GetBytes("""{"schema":"toolledger/site-policy/1","sessions":{"slotLengthSeconds":0.49999999999999999999999999999999999}}""");

        Assert.False(SitePolicy.TryParse(policy, out _, out IReadOnlyList<RecordIssue> issues));
        Assert.Contains(issues, issue => issue.Rule == "record.out-of-range" && issue.Place == "$.sessions.slotLengthSeconds");
    }

    [Property]
    public Property A_quantity_is_accepted_only_if_its_digits_as_written_are_a_whole_number_of_thousandths() =>
        Prop.ForAll(Written().ToArbitrary(), number =>
        {
            bool accepted = KitManifest.TryParse(Manifest(number.Text), out KitManifest? manifest, out _);
            BigInteger thousandths = BigInteger.Parse(number.Digits, CultureInfo.InvariantCulture) * 1000;
            BigInteger one = BigInteger.Pow(10, number.DecimalCount);
            bool isWhole = thousandths % one == 0 && thousandths > 0 && thousandths / one <= 1_000_000_000;
            return accepted == isWhole && (!accepted || new BigInteger(((CountedLine)manifest!.Lines[0]).Quantity.Amount * 1000) == thousandths / one);
        });

    /// <summary>Numbers near whole ones: a short head, then zeros or nines, then a last digit.</summary>
    private static Gen<(string Text, string Digits, int DecimalCount)> Written() =>
        from head in Gen.Choose(0, 1_000_001)
        from repeated in Gen.Elements('0', '9', '5')
        from count in Gen.Choose(0, 45)
        from last in Gen.Elements("", "0", "1", "9")
        let decimals = new string(repeated, count) + last
        let text = head.ToString(CultureInfo.InvariantCulture) + (decimals.Length > 0 ? "." + decimals : "")
        select (text, head.ToString(CultureInfo.InvariantCulture) + decimals, decimals.Length);

    private static byte[] Manifest(string quantity) => Encoding.UTF8.GetBytes($$"""
        {
          "schema": "toolledger/kit-manifest/1", "kit": "K1", "title": "Kit", "revision": 1, "effectiveFrom": "2026-02-01T06:00:00+01:00",
          "signedBy": { "person": "P1", "role": "custodian", "at": "2026-01-31T06:00:00+01:00" },
          "lines": [ { "line": 1, "kind": "counted", "description": "Rags", "quantity": {{quantity}}, "unit": "each" } ]
        }
        """);
}
