using System.Globalization;
using System.IO;
using System.Linq;
using ToolLedger.Identifiers;

namespace TagInspect;

/// <summary>A readable breakdown of one item.</summary>
internal static class PlainText
{
    internal static void Write(string item, Answer answer, TextWriter output)
    {
        output.WriteLine(Printable(item));
        if (answer.Rule is not null)
        {
            output.WriteLine("  refused:        " + Printable(answer.Message));
        }

        if (answer.RawUri is not null)
        {
            output.WriteLine("  raw URI:        " + answer.RawUri);
        }

        if (answer.Fields is { } fields)
        {
            WriteFields(fields, output);
        }

        if (answer.Identity is { } identity)
        {
            WriteIdentity(identity, output);
        }

        output.WriteLine();
    }

    private static void WriteFields(EpcFields fields, TextWriter output)
    {
        Epc epc = fields.ToEpc();
        string scheme = EpcSchemeName.Of(fields.Scheme);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  scheme:         {scheme}, {epc.BitCount} bits"));
        output.WriteLine("  on the tag:     " + epc.ToWholeWords());
        output.WriteLine("  tag URI:        " + fields.ToTagUri());
        output.WriteLine("  bits            field          value");
        foreach (EpcFieldBits field in fields.GetLayout())
        {
            string range = string.Create(CultureInfo.InvariantCulture, $"{field.Offset}-{field.Offset + field.Width - 1}");
            string meaning = field.Field switch
            {
                EpcField.Header => "  " + scheme,
                EpcField.Filter => "  " + fields.FilterName,
                EpcField.Partition => string.Create(CultureInfo.InvariantCulture, $"  company prefix of {fields.Identity.CompanyPrefix.Length} digits"),
                _ => string.Empty,
            };
            output.WriteLine("  " + range.PadRight(16) + field.Field.ToString().PadRight(15) + field.Value + meaning);
        }
    }

    private static void WriteIdentity(EpcIdentity identity, TextWriter output)
    {
        output.WriteLine("  identity:       " + identity.ToUri());
        if (identity.ToElementString() is { Length: > 0 } elements)
        {
            output.WriteLine("  element string: " + elements);
            output.WriteLine("  Digital Link:   " + identity.ToDigitalLink());
        }
    }

    // Control characters must not reach the terminal raw.
    private static string Printable(string text) =>
        string.Concat(text.Take(200).Select(c => char.IsControl(c) ? '?' : c)) + (text.Length > 200 ? " ..." : string.Empty);
}
