using System;

namespace ToolLedger.Reconciliation;

/// <summary>The English words of the closed sets of this room, for people. Codes for programs are the enumeration names.</summary>
public static class Words
{
    /// <summary>The words of a line state, for example "not read".</summary>
    /// <param name="state">The state.</param>
    /// <returns>Lower-case words.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a defined value.</exception>
    public static string Of(LineState state) => state switch
    {
        LineState.Conflict => "conflict",
        LineState.Partial => "partial",
        LineState.NotAssessed => "not assessed",
        LineState.NotRead => "not read",
        LineState.Weak => "weak",
        LineState.Accounted => "accounted for",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Not a line state."),
    };

    /// <summary>The words of a basis, for example "sighted".</summary>
    /// <param name="basis">The basis.</param>
    /// <returns>Lower-case words.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a defined value.</exception>
    public static string Of(AccountingBasis basis) => basis switch
    {
        AccountingBasis.None => "no basis",
        AccountingBasis.Sighted => "sighted",
        AccountingBasis.Counted => "counted",
        AccountingBasis.Read => "read",
        AccountingBasis.Record => "record",
        AccountingBasis.Inside => "all lines inside",
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "Not a basis."),
    };

    /// <summary>The words of a kit state, for example "no valid read".</summary>
    /// <param name="state">The state.</param>
    /// <returns>Lower-case words.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a defined value.</exception>
    public static string Of(KitState state) => state switch
    {
        KitState.Complete => "complete",
        KitState.Open => "open",
        KitState.Discrepant => "discrepant",
        KitState.NoValidRead => "no valid read",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Not a kit state."),
    };

    /// <summary>The words of a read explanation, for example "outside window".</summary>
    /// <param name="kind">The explanation.</param>
    /// <returns>Lower-case words.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a defined value.</exception>
    public static string Of(ReadExplanationKind kind) => kind switch
    {
        ReadExplanationKind.Expected => "expected",
        ReadExplanationKind.Unexpected => "unexpected",
        ReadExplanationKind.Unknown => "unknown",
        ReadExplanationKind.OutsideWindow => "outside window",
        ReadExplanationKind.Repeat => "repeat",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a read explanation."),
    };
}
