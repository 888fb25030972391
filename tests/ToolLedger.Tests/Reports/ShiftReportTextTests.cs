using System;
using System.IO;
using Xunit;

namespace ToolLedger.Tests.Reports;

public sealed class ShiftReportTextTests
{
    [Fact]
    public void Draft()
    {
        File.WriteAllText("/tmp/e_report.txt", new TurbineShift().Report().ToText());
        File.WriteAllText("/tmp/e_report.md", new TurbineShift().Report().ToMarkdown());
        File.WriteAllBytes("/tmp/e_report.json", new TurbineShift().Report().ToJson());
        File.WriteAllText("/tmp/e_report2.txt", new TurbineShift { IsStationAlive = false, IsCounted = false }.Report().ToText());
        File.WriteAllText("/tmp/e_report3.txt", new TurbineShift { NotRead = [], Weak = [], Strays = [] }.Report().ToText());
    }
}
