using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;
using ToolLedger.Reads;

namespace ToolLedger.Reports;

/// <summary>Draws looks as upright marks over the time of a pass: tall where they count, short where they do not. Only for the eye; the words beside it say the same.</summary>
internal static class HtmlStrip
{
    // The narrowest a strip may be, by class: about three pixels a slot. The style sheet has the widths.
    private static readonly int[] Widths = [60, 120, 180, 240, 480, 960, 1920];

    /// <summary>Whether a pass of so many slots is too wide for a small screen, so that it scrolls.</summary>
    internal static bool IsWide(int slots) => ClassOf(slots) > 2;

    /// <summary>The rules of the style sheet.</summary>
    internal static string Rules()
    {
        var rules = new StringBuilder();
        for (int index = 0; index < Widths.Length; index++)
        {
            rules.Append(CultureInfo.InvariantCulture, $".w{index}{{min-width:{Widths[index]}px;max-width:{Widths[index] * 4}px}}\n");
        }

        return rules.ToString();
    }

    internal static void Put(StringBuilder page, TimelinePass pass, IReadOnlyList<Look> looks, bool isCounted)
    {
        int slots = pass.SlotCount;
        page.Append(CultureInfo.InvariantCulture, $"<svg class=\"strip w{ClassOf(slots)}\" width=\"240\" height=\"20\" viewBox=\"0 0 {slots} 10\" preserveAspectRatio=\"none\" aria-hidden=\"true\" focusable=\"false\">")
            .Append(CultureInfo.InvariantCulture, $"<path class=\"base\" d=\"M0 9.5h{slots}\"/>");
        if (looks.Count > 0)
        {
            // Each mark goes down from its top; the next one starts from there.
            int height = isCounted ? 8 : 3;
            page.Append(isCounted ? "<path class=\"mk\" d=\"" : "<path class=\"mk short\" d=\"");
            int before = 0;
            for (int index = 0; index < Math.Min(looks.Count, DrawingRoom.RowLimit); index++)
            {
                int slot = looks[index].Slot - pass.FirstSlot;
                page.Append(index == 0
                    ? string.Create(CultureInfo.InvariantCulture, $"M{slot}.5 {9 - height}v{height}")
                    : string.Create(CultureInfo.InvariantCulture, $"m{slot - before}-{height}v{height}"));
                before = slot;
            }

            page.Append("\"/>");
        }

        page.Append("</svg>");
    }

    private static int ClassOf(int slots)
    {
        int wanted = Math.Min(slots, Widths[^1] / 3) * 3;
        int index = Array.FindIndex(Widths, width => width >= wanted);
        return index < 0 ? Widths.Length - 1 : index;
    }
}
