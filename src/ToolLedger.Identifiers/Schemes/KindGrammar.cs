using System.Text;

namespace ToolLedger.Identifiers.Schemes;

/// <summary>The components of one kind of identity: what may stand in them, and how a URI writes them.</summary>
internal sealed class KindGrammar
{
    internal KindGrammar(EpcKind kind, string name, params ComponentRule[] components)
    {
        Kind = kind;
        Name = name;
        Components = components;
        UriStart = Encoding.ASCII.GetBytes((kind == EpcKind.Lgtin ? "urn:epc:class:" : "urn:epc:id:") + name + ":");
    }

    internal EpcKind Kind { get; }

    /// <summary>The name in URIs, such as <c>sgtin</c>.</summary>
    internal string Name { get; }

    /// <summary>The components in the order of the URI.</summary>
    internal ComponentRule[] Components { get; }

    /// <summary>How GS1 application identifiers write it; none for kinds outside the GS1 keys.</summary>
    internal Gs1Key? Gs1 { get; set; }

    /// <summary>The beginning of the pure identity URI, up to the components.</summary>
    internal byte[] UriStart { get; }

    /// <summary>Checks one component.</summary>
    internal static bool Accepts(
        ComponentRule rule, in EpcComponent component, int prefixLength, int position, ref EpcFault fault)
    {
        switch (rule.Form)
        {
            case ComponentForm.CompanyPrefix:
                return AcceptsPrefix(rule, component, position, ref fault);
            case ComponentForm.Remainder or ComponentForm.FixedDigits:
                return AcceptsExactDigits(rule, component, rule.MaximumFor(prefixLength), position, ref fault);
            case ComponentForm.Digits:
                return AcceptsDigits(rule, component, rule.Maximum, position, ref fault);
            case ComponentForm.Number:
                return AcceptsNumber(rule, component, position, ref fault);
            case ComponentForm.Cage:
                return AcceptsCage(rule, component, position, ref fault);
            case ComponentForm.ContainerNumber:
                return ContainerNumber.Accepts(rule, component, position, ref fault);
            default:
                return AcceptsText(rule, component, rule.MaximumFor(prefixLength), position, ref fault);
        }
    }

    /// <summary>Whether the set of the form has the character.</summary>
    internal static bool InSet(ComponentForm form, uint character) => form switch
    {
        ComponentForm.Characters82 => CharacterSets.Is82(character),
        ComponentForm.Characters39 or ComponentForm.MarkedSerial => CharacterSets.Is39(character),
        ComponentForm.PartNumber => character != '#' && CharacterSets.Is39(character),
        ComponentForm.Cage => CharacterSets.IsCage(character),
        ComponentForm.ContainerNumber => character is >= '0' and <= '9' or >= 'A' and <= 'Z',
        _ => character is >= '0' and <= '9',
    };

    /// <summary>Checks all components of an identity that was put together from parts.</summary>
    internal bool Accepts(in IdentityBits bits, ref EpcFault fault)
    {
        int used = 0;
        foreach (ComponentRule rule in Components)
        {
            used |= 1 << (int)rule.Slot;
            if (!Accepts(rule, bits.Get(rule.Slot), bits.A.Length, -1, ref fault))
            {
                return false;
            }
        }

        bool extra = ((used & (1 << (int)ComponentSlot.B)) == 0 && bits.B.Length > 0)
            || ((used & (1 << (int)ComponentSlot.C)) == 0 && bits.C.Length > 0)
            || ((used & (1 << (int)ComponentSlot.Piece)) == 0 && (bits.Piece | bits.Total) != 0);
        return !extra || Fail(Components[0], EpcRule.ComponentCount, -1, 0, (ulong)Components.Length, ref fault);
    }

    internal static bool Fail(ComponentRule rule, EpcRule broken, int position, int offset, ulong found, ref EpcFault fault)
    {
        fault = position < 0
            ? new EpcFault(broken, rule.Field, EpcPositionUnit.None, 0, found)
            : new EpcFault(broken, rule.Field, EpcPositionUnit.Character, position + offset, found);
        return false;
    }

    private static bool AcceptsPrefix(ComponentRule rule, in EpcComponent component, int position, ref EpcFault fault)
    {
        if (component.IsNumber && component.Length is >= 6 and <= 12)
        {
            return true;
        }

        return !OnlyDigits(rule, component, position, ref fault)
            ? false
            : Fail(rule, EpcRule.CompanyPrefixLength, position, 0, (ulong)component.Length, ref fault);
    }

    private static bool AcceptsExactDigits(
        ComponentRule rule, in EpcComponent component, int count, int position, ref EpcFault fault)
    {
        if (component.Length == count && (component.IsNumber || count == 0))
        {
            return true;
        }

        return !OnlyDigits(rule, component, position, ref fault)
            ? false
            : Fail(rule, EpcRule.DigitCount, position, 0, (ulong)component.Length, ref fault);
    }

    private static bool AcceptsDigits(
        ComponentRule rule, in EpcComponent component, int maximum, int position, ref EpcFault fault)
    {
        if (component.Length == 0)
        {
            return Fail(rule, EpcRule.NotEmpty, position, 0, 0, ref fault);
        }

        if (component.IsNumber && component.Length <= maximum)
        {
            return true;
        }

        return !OnlyDigits(rule, component, position, ref fault)
            ? false
            : Fail(rule, EpcRule.MaximumLength, position, 0, (ulong)component.Length, ref fault);
    }

    private static bool AcceptsNumber(ComponentRule rule, in EpcComponent component, int position, ref EpcFault fault)
    {
        if (!AcceptsDigits(rule, component, rule.Maximum, position, ref fault))
        {
            return false;
        }

        if (component.HasLeadingZero)
        {
            return Fail(rule, EpcRule.NoLeadingZero, position, 0, '0', ref fault);
        }

        return component.Number <= rule.MaximumNumber
            || Fail(rule, EpcRule.FitsBits, position, 0, component.Number, ref fault);
    }

    private static bool AcceptsCage(ComponentRule rule, in EpcComponent component, int position, ref EpcFault fault)
    {
        int length = component.Length;
        if (length is 5 or 6 && (component.IsNumber || CharacterSets.OutsideCage(component.Word(0)) >> (64 - (8 * length)) == 0))
        {
            return true;
        }

        for (int i = 0; i < component.Length; i++)
        {
            if (!CharacterSets.IsCage(component.CharacterAt(i)))
            {
                return Fail(rule, EpcRule.CageCode, position, i, component.CharacterAt(i), ref fault);
            }
        }

        return Fail(rule, EpcRule.DigitCount, position, 0, (ulong)component.Length, ref fault);
    }

    private static bool AcceptsText(
        ComponentRule rule, in EpcComponent component, int maximum, int position, ref EpcFault fault)
    {
        int length = component.Length;
        if (length < rule.Minimum)
        {
            return Fail(rule, EpcRule.NotEmpty, position, 0, 0, ref fault);
        }

        if (!component.IsNumber && !OnlySetAtOnce(rule.Form, component) && !OnlySet(rule, component, position, ref fault))
        {
            return false;
        }

        return length <= maximum || Fail(rule, EpcRule.MaximumLength, position, 0, (ulong)length, ref fault);
    }

    // Eight characters at a time. No is not an answer: the careful way follows and says what is wrong.
    private static bool OnlySetAtOnce(ComponentForm form, in EpcComponent component)
    {
        ulong outside = 0;
        int left = component.Length;
        for (int i = 0; left > 0; i++, left -= 8)
        {
            ulong word = component.Word(i);
            ulong bad = form == ComponentForm.Characters82
                ? CharacterSets.Outside82(word)
                : CharacterSets.Outside39(word) | (form == ComponentForm.Characters39 ? 0 : CharacterSets.NumberSigns(word));
            outside |= left >= 8 ? bad : bad >> (64 - (8 * left));
        }

        return outside == 0;
    }

    private static bool OnlySet(ComponentRule rule, in EpcComponent component, int position, ref EpcFault fault)
    {
        for (int i = 0; i < component.Length; i++)
        {
            uint character = component.CharacterAt(i);
            if (!InSet(rule.Form, character))
            {
                return Fail(rule, EpcRule.CharacterSet, position, i, character, ref fault);
            }

            if (character == '#' && rule.Form == ComponentForm.MarkedSerial && (i > 0 || component.Length == 1))
            {
                return Fail(rule, EpcRule.NumberSignFirst, position, i, character, ref fault);
            }
        }

        return true;
    }

    private static bool OnlyDigits(ComponentRule rule, in EpcComponent component, int position, ref EpcFault fault)
    {
        for (int i = 0; i < component.Length; i++)
        {
            if (component.CharacterAt(i) is < (byte)'0' or > (byte)'9')
            {
                return Fail(rule, EpcRule.DecimalDigits, position, i, component.CharacterAt(i), ref fault);
            }
        }

        return true;
    }
}
