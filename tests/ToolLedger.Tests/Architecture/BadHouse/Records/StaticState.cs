using System;
using System.Threading;

namespace ToolLedger.Tests.Architecture.BadHouse.Records;

/// <summary>State that outlives a call and belongs to nobody.</summary>
internal static class StaticState
{
    private static int _count;

    [ThreadStatic]
    private static int _countOfThread;

    public static event Action? Happened;

    public static int Setting { get; set; }

    public static string Text => field ??= "made late";

    public static int Elsewhere
    {
        get => Volatile.Read(ref _count);
        set
        {
            _count = value;
            _countOfThread = value;
            Happened?.Invoke();
        }
    }
}
