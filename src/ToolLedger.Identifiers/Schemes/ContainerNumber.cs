namespace ToolLedger.Identifiers.Schemes;

/// <summary>Freight container numbers: three owner letters, one of J, U, Z, six digits and a check digit (ISO 6346).</summary>
internal static class ContainerNumber
{
    internal static bool Accepts(ComponentRule rule, in EpcComponent component, int position, ref EpcFault fault)
    {
        if (component.Length != 11)
        {
            return KindGrammar.Fail(rule, EpcRule.DigitCount, position, 0, (ulong)component.Length, ref fault);
        }

        int sum = 0;
        for (int i = 0; i < 11; i++)
        {
            byte character = component.CharacterAt(i);
            if (!Fits(character, i))
            {
                return KindGrammar.Fail(rule, EpcRule.CharacterSet, position, i, character, ref fault);
            }

            sum += i < 10 ? Value(character) << i : 0;
        }

        int check = sum % 11 % 10;
        return component.CharacterAt(10) - '0' == check
            || KindGrammar.Fail(rule, EpcRule.CheckDigit, position, 10, component.CharacterAt(10), ref fault);
    }

    private static bool Fits(byte character, int index) => index switch
    {
        // The letters I and O are not used in owner codes (GS1 TDS 2.3, s.6.3).
        < 3 => character is >= (byte)'A' and <= (byte)'Z' and not (byte)'I' and not (byte)'O',
        3 => character is (byte)'J' or (byte)'U' or (byte)'Z',
        _ => character is >= (byte)'0' and <= (byte)'9',
    };

    // Letters count 10 to 38 leaving out the multiples of 11.
    private static int Value(byte character)
    {
        if (character <= '9')
        {
            return character - '0';
        }

        int value = character - 'A' + 10;
        return value + ((value - 1) / 10);
    }
}
