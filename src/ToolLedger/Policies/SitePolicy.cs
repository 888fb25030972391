using System;
using ToolLedger.Calibration;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Ledger;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Policies;

/// <summary>Everything a site decides for itself, in one record: when a session is evidence, what reads prove, how far people's word goes, what marks look like, how due dates are read,
/// which patterns are worth a finding, and the site's calendar.</summary>
/// <remarks>The defaults are the P0 example values of this library, not a directive's: an organisation puts its own in their place. Changed with <c>with</c>.
/// Immutable and thread-safe.</remarks>
public sealed partial record SitePolicy
{
    /// <summary>The longest name, in characters.</summary>
    public const int MaxNameLength = 64;

    /// <summary>The default values (P0).</summary>
    public static SitePolicy Default { get; } = new();

    /// <summary>What the site calls this policy; reports show it beside the digest.</summary>
    /// <value>1 to 64 printable characters. The default is "P0".</value>
    /// <exception cref="ArgumentException">The name is not such a text.</exception>
    public string Name { get; init => field = RecordText.Require(value, MaxNameLength, nameof(value)); } = "P0";

    /// <summary>When a session is evidence, and what counts as one look.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public SessionPolicy Sessions { get; init => field = Given(value); } = new();

    /// <summary>What reads prove about a tool.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public PresencePolicy Presence { get; init => field = Given(value); } = new CountingPolicy();

    /// <summary>How far what people say may settle lines.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public InventoryPolicy Inventory { get; init => field = Given(value); } = new();

    /// <summary>Who may sign for what.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public CustodyPolicy Custody { get; init => field = Given(value); } = new();

    /// <summary>What the marks of this site look like.</summary>
    /// <value>The default asks for nothing.</value>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public MarkFormat Marks { get; init => field = Given(value); } = MarkFormat.Any;

    /// <summary>How due dates are read.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public CalibrationPolicy Calibration { get; init => field = Given(value); } = new();

    /// <summary>When patterns in the reads become findings.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public FindingPolicy Findings { get; init => field = Given(value); } = new();

    /// <summary>Who may end searches and holds, who must be told, what must be searched.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public HoldPolicy Holds { get; init => field = Given(value); } = new();

    /// <summary>The dates and clock offsets of the site.</summary>
    /// <value>The default is UTC.</value>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public SiteCalendar Calendar { get; init => field = Given(value); } = SiteCalendar.Utc;

    /// <summary>The part that a reconciliation uses.</summary>
    public ReconciliationPolicy Reconciliation => new()
    {
        Sessions = Sessions,
        Presence = Presence,
        Inventory = Inventory,
        Custody = Custody,
        Marks = Marks,
        Calibration = Calibration,
        Findings = Findings,
        Calendar = Calendar,
    };

    /// <summary>The part that a ledger uses, with the manifests it looks tools up in.</summary>
    /// <param name="kits">The manifests of all kits.</param>
    /// <returns>The settings.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="kits"/> is null.</exception>
    public LedgerSettings ToLedgerSettings(KitRegister kits) => new() { Custody = Custody, Holds = Holds, Kits = Given(kits) };

    /// <summary>SHA-256 over the canonical form (RFC 8785) of <see cref="ToJson"/>; computed at each call.</summary>
    public Digest Digest => Digest.Of(CanonicalJson.Canonicalize(ToJson()));

    private static T Given<T>(T value)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(value);
        return value;
    }
}
