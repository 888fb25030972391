using System;
using System.Collections.Generic;
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace CalibrationDesk;

/// <summary>What the desk works on.</summary>
internal sealed record FleetData(
    string Name, IReadOnlyList<Tool> Tools, CalibrationRegister Register, IReadOnlyList<MeasuredUse> Uses, CalibrationPolicy Policy, SiteCalendar Calendar, DateTimeOffset AsOf);
