using System;

namespace ToolLedger.Identifiers;

/// <summary>The rule of one component of a kind of identity.</summary>
internal sealed class ComponentRule
{
    internal ComponentRule(ComponentSlot slot, EpcField field, ComponentForm form, int maximum, int minimum = 1)
    {
        Slot = slot;
        Field = field;
        Form = form;
        Maximum = maximum;
        Minimum = minimum;
    }

    internal ComponentSlot Slot { get; }

    internal EpcField Field { get; }

    internal ComponentForm Form { get; }

    /// <summary>Characters or digits; for a remainder the digits of prefix and component together.</summary>
    internal int Maximum { get; }

    internal int Minimum { get; }

    /// <summary>The largest number, where the digits alone do not say it.</summary>
    internal ulong MaximumNumber { get; set; } = ulong.MaxValue;

    /// <summary>Whether the maximum is shared with the company prefix in front.</summary>
    internal bool SharedWithPrefix { get; set; }

    internal int MaximumFor(int prefixLength) =>
        SharedWithPrefix || Form == ComponentForm.Remainder ? Maximum - prefixLength : Maximum;

    /// <summary>Whether a run of digits, which may be empty, is certainly right here. No is not an answer: the careful way follows
    /// and says what is wrong.</summary>
    internal bool TakesDigits(ulong number, int count, int prefixLength)
    {
        switch (Form)
        {
            case ComponentForm.CompanyPrefix:
                return count is >= 6 and <= 12;
            case ComponentForm.Remainder or ComponentForm.FixedDigits:
                return count == MaximumFor(prefixLength);
            case ComponentForm.Number:
                return count >= 1 && count <= Maximum && number <= MaximumNumber
                    && (count == 1 || number >= DecimalText.PowerOfTen(count - 1));
            case ComponentForm.Cage or ComponentForm.ContainerNumber:
                return false;
            default:
                return count >= Math.Max(1, Minimum) && count <= MaximumFor(prefixLength);
        }
    }
}
