using System.Collections.Generic;
using ToolLedger.Calibration;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>What a conclusion holds that a plain one does not: of many kits, most lines have none of it. Written only while the conclusion is initialised.</summary>
internal sealed class LineParts
{
    public IReadOnlyList<int> Within { get; set; } = [];

    public IReadOnlyList<LineConclusion> Inner { get; set; } = [];

    public IReadOnlyList<AccountingBasis> OtherBases { get; set; } = [];

    public IReadOnlyList<Reason> Reasons { get; set; } = [];

    public NextStep? Next { get; set; }

    public LineEvidence? Evidence { get; set; }

    public CalibrationStatus? Calibration { get; set; }

    public bool IsEpcOnly { get; set; }

    public bool IsPositiveDifference { get; set; }
}
