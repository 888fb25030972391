using System;
using ToolLedger.Records;
using Xunit;

namespace ToolLedger.Tests.Records;

public sealed class QuantityTests
{
    [Theory]
    [InlineData("0", "0 each")]
    [InlineData("6", "6 each")]
    [InlineData("6.000", "6 each")]
    [InlineData("0.125", "0.125 each")]
    [InlineData("1000000", "1000000 each")]
    public void An_amount_in_range_is_kept_and_shown_without_trailing_zeros(string amount, string shown)
    {
        var quantity = new Quantity(decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture), Unit.Each);
        Assert.Equal(shown, quantity.ToString());
    }

    [Theory]
    [InlineData("-1")]
    [InlineData("-0.001")]
    [InlineData("0.0001")]
    [InlineData("1000000.001")]
    [InlineData("79228162514264337593543950335")]
    public void An_amount_out_of_range_is_refused(string amount) => Assert.Throws<ArgumentOutOfRangeException>(() =>
        new Quantity(decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture), Unit.Each));

    [Fact]
    public void A_quantity_needs_a_unit() => Assert.Throws<ArgumentException>(() => new Quantity(1, default));

    [Fact]
    public void Equal_amounts_of_different_units_differ() =>
        Assert.NotEqual(new Quantity(1, Unit.Each), new Quantity(1, Unit.Piece));
}
