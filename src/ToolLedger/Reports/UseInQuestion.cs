using System.Collections.Generic;
using ToolLedger.Custody;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>A use that somebody has to review, and why.</summary>
internal sealed record UseInQuestion(ToolUse Use, IReadOnlyList<Reason> Why);
