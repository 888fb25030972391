using System;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Kits;

namespace ToolLedger.Ledger;

/// <summary>By which rules a ledger takes entries, and the manifests it looks tools up in.</summary>
/// <remarks>Equal when all three are. Immutable and thread-safe.</remarks>
public sealed record LedgerSettings
{
    /// <summary>Who may sign for what.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public CustodyPolicy Custody { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = new();

    /// <summary>Who may end searches and holds.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public HoldPolicy Holds { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = new();

    /// <summary>The manifests of all kits.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public KitRegister Kits { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = KitRegister.Empty;
}
