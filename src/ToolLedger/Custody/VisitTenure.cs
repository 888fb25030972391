using System;

namespace ToolLedger.Custody;

/// <summary>A visit and what ended it, if not the visit itself says.</summary>
internal sealed record VisitTenure(JobVisit Visit, JobDeparture? Departure)
{
    internal DateTimeOffset? Until => Departure?.At ?? Visit.Until;
}
