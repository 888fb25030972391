using System;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>Reads the text of a pattern.</summary>
internal ref struct PatternReader
{
    private readonly ReadOnlySpan<byte> _text;
    private int _position;

    internal PatternReader(ReadOnlySpan<byte> text)
    {
        _text = text;
        _position = 0;
    }

    /// <summary>Reads up to the name of the scheme. A pure identity pattern has no codec.</summary>
    internal bool TryReadStart(out EpcCodec? codec, out KindGrammar? grammar, ref EpcFault fault)
    {
        codec = null;
        grammar = null;
        bool tag = _text.StartsWith("urn:epc:pat:"u8);
        if (!tag && !_text.StartsWith("urn:epc:idpat:"u8))
        {
            return Fail(EpcRule.UriPrefix, EpcField.Scheme, 0, (ulong)_text.Length, ref fault);
        }

        int start = tag ? 12 : 14;
        int length = Math.Max(0, _text.Slice(start).IndexOf((byte)':'));
        if (tag)
        {
            codec = SchemeList.OfName(_text.Slice(start), out length);
            grammar = codec?.Grammar;
        }
        else
        {
            grammar = KindList.OfName(_text.Slice(start, length));
        }

        _position = start + length + 1;
        return grammar is not null || Fail(EpcRule.SchemeName, EpcField.Scheme, start, (ulong)length, ref fault);
    }

    internal bool TryReadFilter(int bits, out PatternComponent filter, ref EpcFault fault)
    {
        var rule = new ComponentRule(ComponentSlot.A, EpcField.Filter, ComponentForm.Number, 2) { MaximumNumber = (1UL << bits) - 1 };
        return TryReadOne(rule, false, true, false, 0, out filter, ref fault) && TrySkipDot(1, ref fault);
    }

    internal bool TryReadComponents(EpcCodec? codec, KindGrammar grammar, PatternComponent[] components, ref EpcFault fault)
    {
        int prefixLength = 0;
        for (int i = 0; i < components.Length; i++)
        {
            bool last = i == components.Length - 1;
            ComponentRule rule = codec?.PatternRule(grammar.Components[i], prefixLength) ?? grammar.Components[i];
            bool numeric = codec is not null && rule.Form is ComponentForm.Remainder or ComponentForm.Number or ComponentForm.FixedDigits;

            // Behind an asterisk for the company prefix the digits of the reference are not known; in pure identities only
            // trailing components may be open.
            bool onlyAny = i > 0 && components[i - 1].IsAny
                && (codec is null || (i == 1 && grammar.Components[0].Form == ComponentForm.CompanyPrefix));
            if (onlyAny && (_position >= _text.Length || _text[_position] != '*'))
            {
                byte found = _position < _text.Length ? _text[_position] : (byte)0;
                return Fail(EpcRule.PatternForm, rule.Field, _position, found, ref fault);
            }

            if (!TryReadOne(rule, last, numeric, codec is null, prefixLength, out components[i], ref fault))
            {
                return false;
            }

            prefixLength = i == 0 ? components[0].LengthOfValue : prefixLength;
            if (!last && !TrySkipDot(i + 1, ref fault))
            {
                return false;
            }
        }

        return true;
    }

    private bool TrySkipDot(int count, ref EpcFault fault)
    {
        if (_position >= _text.Length || _text[_position] != '.')
        {
            return Fail(EpcRule.ComponentCount, EpcField.None, _position, (ulong)count, ref fault);
        }

        _position++;
        return true;
    }

    private bool TryReadOne(
        ComponentRule rule, bool last, bool numeric, bool identity, int prefixLength, out PatternComponent component, ref EpcFault fault)
    {
        component = PatternComponent.Anything;
        int end = EndOfComponent(last);
        ReadOnlySpan<byte> text = _text.Slice(0, end);
        int start = _position;

        // In a text an asterisk is a character too; alone it means anything.
        if (end == start + 1 && text[start] == '*')
        {
            _position = end;
            return true;
        }

        if (start < end && text[start] == '[')
        {
            return numeric && !identity
                ? TryReadRange(rule, end, prefixLength, out component, ref fault)
                : Fail(EpcRule.PatternForm, rule.Field, start, '[', ref fault);
        }

        if (!UriComponents.TryReadOne(rule, text, ref _position, out EpcComponent value, ref fault)
            || !KindGrammar.Accepts(rule, value, prefixLength, start, ref fault))
        {
            return false;
        }

        component = PatternComponent.Value(value);
        return true;
    }

    private bool TryReadRange(ComponentRule rule, int end, int prefixLength, out PatternComponent component, ref EpcFault fault)
    {
        component = default;
        int start = _position;
        ReadOnlySpan<byte> inner = _text.Slice(start + 1, end - start - 1);
        int dash = inner.IndexOf((byte)'-');
        if (dash < 1 || inner[inner.Length - 1] != ']')
        {
            return Fail(EpcRule.PatternForm, rule.Field, start, '[', ref fault);
        }

        int at = start + 1;
        if (!TryReadBound(rule, at + dash, prefixLength, ref at, out EpcComponent low, ref fault))
        {
            return false;
        }

        at = start + 2 + dash;
        if (!TryReadBound(rule, end - 1, prefixLength, ref at, out EpcComponent high, ref fault))
        {
            return false;
        }

        if (low.Number > high.Number)
        {
            return Fail(EpcRule.PatternForm, rule.Field, start, '[', ref fault);
        }

        _position = end;
        component = PatternComponent.Range(low, high, rule.Form != ComponentForm.Number);
        return true;
    }

    private readonly bool TryReadBound(
        ComponentRule rule, int end, int prefixLength, ref int at, out EpcComponent bound, ref EpcFault fault)
    {
        int start = at;
        return UriComponents.TryReadOne(rule, _text.Slice(0, end), ref at, out bound, ref fault)
            && KindGrammar.Accepts(rule, bound, prefixLength, start, ref fault);
    }

    private readonly int EndOfComponent(bool last)
    {
        int dot = last ? -1 : _text.Slice(_position).IndexOf((byte)'.');
        return dot < 0 ? _text.Length : _position + dot;
    }

    private static bool Fail(EpcRule rule, EpcField field, int position, ulong found, ref EpcFault fault)
    {
        fault = new EpcFault(rule, field, EpcPositionUnit.Character, position, found);
        return false;
    }
}
