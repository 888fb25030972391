using System;
using System.Collections.Generic;
using System.Globalization;
using ToolLedger.Identifiers.Schemes;

namespace ToolLedger.Identifiers;

/// <content>What a person wants to see of a tag.</content>
public readonly partial struct EpcFields
{
    /// <summary>What the filter value stands for (GS1 TDS 2.3, chapter 10), such as <c>tools</c> for ADI 58;
    /// <c>reserved</c> where the standard assigns nothing, empty for a scheme without a filter.</summary>
    public string FilterName => FilterNames.Of(_bits.Kind, _bits.Filter);

    /// <summary>The fields in the order of the bits.</summary>
    /// <returns>One entry for each field; none for the default value.</returns>
    public IReadOnlyList<EpcFieldBits> GetLayout()
    {
        EpcCodec? codec = SchemeList.Of(_bits.Scheme);
        var layout = new List<EpcFieldBits>();
        if (codec is null)
        {
            return layout;
        }

        Span<ulong> words = stackalloc ulong[Bits.Words];
        int used = Encode(words);
        IdentityBits bits = _bits;
        codec.Describe(words, used, (field, offset, width) =>
            layout.Add(new EpcFieldBits(field, offset, width, ValueOf(bits, codec, field))));
        return layout;
    }

    private static string ValueOf(in IdentityBits bits, EpcCodec codec, EpcField field)
    {
        switch (field)
        {
            case EpcField.Header:
                return codec.Header.ToString("X2", CultureInfo.InvariantCulture);
            case EpcField.Filter:
                return bits.Filter.ToString(CultureInfo.InvariantCulture);
            case EpcField.Partition:
                return (12 - bits.A.Length).ToString(CultureInfo.InvariantCulture);
        }

        foreach (ComponentRule rule in codec.Grammar.Components)
        {
            if (rule.Field == field)
            {
                return bits.Get(rule.Slot).ToString();
            }
        }

        return "0";
    }
}
