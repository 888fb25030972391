using System;
using System.Linq;
using BenchmarkDotNet.Attributes;
using ToolLedger.Calibration;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Benchmarks.Calibration;

/// <summary>The due list of a fleet of 1,000,000 instruments against two ways of sorting, and the status of one instrument.</summary>
[MemoryDiagnoser]
public class DueListBenchmarks
{
    private DateOnly[] _due = [];
    private DueList _list = null!;
    private CalibrationRegister _register = null!;
    private Tool[] _tools = [];
    private int _turn;

    [GlobalSetup]
    public void Setup()
    {
        _due = Fleet.DueDays();
        _list = new DueList(_due);
        (_register, _tools) = Fleet.Register(1000);
    }

    [Benchmark(Baseline = true)]
    public int Order_by() => Enumerable.Range(0, _due.Length).OrderBy(index => _due[index]).ThenBy(static index => index).ToArray()[^1];

    [Benchmark]
    public int Array_sort()
    {
        var keys = new long[_due.Length];
        for (int index = 0; index < keys.Length; index++)
        {
            keys[index] = ((long)_due[index].DayNumber << 32) | (uint)index;
        }

        Array.Sort(keys);
        return (int)keys[^1];
    }

    [Benchmark]
    public int Due_list() => new DueList(_due).Between(DateOnly.MinValue, DateOnly.MaxValue)[^1];

    [Benchmark]
    public int Move_and_slice()
    {
        _turn++;
        _list.Move(_turn % Fleet.Count, Fleet.First.AddDays(_turn % Fleet.DayCount));
        return _list.Through(Fleet.First.AddDays(30)).Length;
    }

    [Benchmark]
    public bool Status_of_one() => _register.Judge(
        _tools[++_turn % _tools.Length], new IntendedUse(new DateTimeOffset(2025, 6, 1, 8, 0, 0, TimeSpan.Zero)) { Value = 100 }, CalibrationPolicy.Default, SiteCalendar.Utc).IsFit;
}
