using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>What can differ between a reconciliation as signed and as computed again.</summary>
/// <remarks>Thread-safe: immutable.</remarks>
public static class SigningReasons
{
    /// <summary>The bytes differ.</summary>
    public static ReasonKind BytesDiffer { get; } = new("signed.bytes-differ", "computed again, the result has other bytes than those signed");

    /// <summary>Another library version.</summary>
    public static ReasonKind OtherVersion { get; } = new("signed.other-version", "signed with version {signed} of the library, computed again with {now}, which may answer differently");

    /// <summary>Another kit, revision or instant.</summary>
    public static ReasonKind OtherSubject { get; } = new("signed.other-subject", "signed for {signed}, computed again for {now}");

    /// <summary>Another policy.</summary>
    public static ReasonKind OtherPolicy { get; } = new("signed.other-policy", "signed under policy {signed}, computed again under {now}");

    /// <summary>Another input.</summary>
    public static ReasonKind OtherInput { get; } = new("signed.other-input", "the input \"{input}\" was {signed} and is {now}");

    /// <summary>Another conclusion of the kit.</summary>
    public static ReasonKind OtherKitState { get; } = new("signed.other-kit-state", "the kit was signed as {signed} and would now be {now}");

    /// <summary>Another conclusion of a line.</summary>
    public static ReasonKind OtherLine { get; } = new("signed.other-line", "line {line} ({what}) was signed as \"{signed}\" and would now be \"{now}\"");

    /// <summary>Every kind of this list.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } = [BytesDiffer, OtherVersion, OtherSubject, OtherPolicy, OtherInput, OtherKitState, OtherLine];
}
