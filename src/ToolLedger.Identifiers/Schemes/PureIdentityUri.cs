using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>Pure identity URIs and class URIs (GS1 TDS 2.3, chapter 6).</summary>
internal static class PureIdentityUri
{
    private const int IdStartLength = 11;

    internal static void Write(in IdentityBits bits, ref TextSink sink)
    {
        KindGrammar grammar = KindList.Of(bits.Kind);
        sink.Add(grammar.UriStart);
        UriComponents.Write(grammar, bits, ref sink);
    }

    internal static bool TryRead(ReadOnlySpan<byte> text, ref IdentityBits bits, ref EpcFault fault)
    {
        foreach (KindGrammar grammar in KindList.Grammars)
        {
            if (text.StartsWith(grammar.UriStart))
            {
                return UriComponents.TryRead(grammar, text, grammar.UriStart.Length, ref bits, ref fault);
            }
        }

        bool family = text.StartsWith("urn:epc:id:"u8) || text.StartsWith("urn:epc:class:"u8);
        fault = family
            ? new EpcFault(EpcRule.SchemeName, EpcField.Scheme, EpcPositionUnit.Character, IdStartLength, (ulong)text.Length)
            : new EpcFault(EpcRule.UriPrefix, EpcField.Scheme, EpcPositionUnit.Character, 0, (ulong)text.Length);
        return false;
    }
}
