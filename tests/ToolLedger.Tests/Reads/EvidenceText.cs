using System.Globalization;
using System.Linq;
using System.Text;
using ToolLedger.Reads;

namespace ToolLedger.Tests.Reads;

/// <summary>Everything of a session that a conclusion may depend on, as text: health, passes, and each tag's evidence.</summary>
internal static class EvidenceText
{
    internal static string Of(ReadSession session)
    {
        var text = new StringBuilder();
        text.Append(session.Health).Append('\n').AppendJoin(',', session.LiveAntennas).Append('\n').AppendJoin(',', session.Passes).Append('\n');
        foreach (TagEvidence tag in session.Tags.Where(tag => tag.LookCount > 0))
        {
            text.Append(Of(tag)).Append('\n');
        }

        return text.ToString();
    }

    internal static string Of(TagEvidence tag) => string.Create(
        CultureInfo.InvariantCulture,
        $"{tag.Tag} {string.Join(';', tag.Cells)} {tag.FirstSeen:O} {tag.LastSeen:O} {tag.Strongest} {tag.Weakest} {string.Join(',', tag.Tids)} {tag.HasMoreTids} {tag.LookCount} {tag.AntennaCount} {tag.PassCount}");
}
