using System;

namespace ToolLedger.Tests.Architecture.BadHouse.Records;

public abstract class Undocumented
{
    public const int Field = 1;

    /// <summary> </summary>
    public int Property { get; init; }

    protected Undocumented(int number) => Property = number;

    public event EventHandler? Happened;

    public static bool operator !(Undocumented value) => value.Property == 0;

    protected virtual void OnHappened(EventArgs e) => Happened?.Invoke(this, e);

    private protected abstract void Hidden();

    /// <summary>It has a summary, its member has none.</summary>
    public enum Colour
    {
        Red,
    }
}
