using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Xunit;

namespace ToolLedger.Identifiers.Tests.Vectors;

/// <summary>Compares element string, element list and Digital Link of a vector with an identity, out and in.</summary>
internal static class Gs1Views
{
    internal static void Check(IReadOnlyDictionary<string, string> row, EpcIdentity identity)
    {
        Assert.Equal(row["elementString"], identity.ToElementString());
        Assert.Equal(row["ai"], string.Join(" ", identity.ToElements().Select(e => e.ApplicationIdentifier + "=" + e.Value)));
        if (row["digitalLink"].Length > 0)
        {
            Assert.Equal(row["digitalLink"], identity.ToDigitalLink());
        }

        if (row["elementString"].Length == 0)
        {
            return;
        }

        // A piece above its total is a valid coding, but not a valid element string.
        EpcRule expected = identity.Piece > identity.Total ? EpcRule.PieceOfTotal : EpcRule.None;
        CompanyPrefixLength length = CompanyPrefixLength.FromDigits(row["gcpLength"].Length > 0
            ? int.Parse(row["gcpLength"], CultureInfo.InvariantCulture)
            : identity.CompanyPrefix.Length);
        Read(EpcIdentity.TryParseElementString(row["elementString"].AsSpan(), length, EpcDecoding.Lenient, out EpcIdentity back, out EpcFault fault), back, fault);
        string raw = identity.ToElementString(ElementStringForm.Raw);
        Assert.Equal(Strip(row["elementString"]), raw);
        Read(EpcIdentity.TryParseElementString(raw.AsSpan(), length, EpcDecoding.Lenient, out back, out fault), back, fault);
        Read(EpcIdentity.TryParseDigitalLink(identity.ToDigitalLink().AsSpan(), length, EpcDecoding.Lenient, out back, out fault), back, fault);
        Read(EpcIdentity.TryFromElements(identity.ToElements(), length, EpcDecoding.Lenient, out back, out fault), back, fault);

        void Read(bool read, EpcIdentity found, EpcFault why)
        {
            Assert.True(read == (expected == EpcRule.None), why.ToString());
            Assert.Equal(expected, why.Rule);
            Assert.Equal(read ? identity : default, found);
        }
    }

    // "(01)1(21)2" without brackets, with a separator behind a first value that has no predefined length.
    private static string Strip(string elementString)
    {
        int second = new[] { "(21)", "(254)", "(8011)", "(235)", "(10)" }
            .Select(ai => elementString.IndexOf(ai, 4, StringComparison.Ordinal)).FirstOrDefault(i => i > 0);
        string first = elementString.Substring(0, second > 0 ? second : elementString.Length);
        bool predefined = first.StartsWith("(01)", StringComparison.Ordinal) || first.StartsWith("(414)", StringComparison.Ordinal);
        string rest = elementString.Substring(first.Length);
        return Plain(first) + (second > 0 && !predefined ? "\u001d" : string.Empty) + Plain(rest);
    }

    private static string Plain(string element)
    {
        int close = element.IndexOf(')');
        return close < 0 ? element : element.Remove(close, 1).Substring(1);
    }
}
