using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Custody;

/// <summary>Why an entry about custody is refused; the code of a rule never changes its meaning.</summary>
/// <remarks>A refusal moves nothing: whoever answered before answers on. Thread-safe: immutable.</remarks>
public static class CustodyRules
{
    /// <summary>The receiver did not sign.</summary>
    public static ReasonKind NotReceived { get; } = new("custody.not-received", "Custody passes when the receiver signs; nobody has.");

    /// <summary>The receiver signed later than the entry says.</summary>
    public static ReasonKind SignedLater { get; } = new("custody.signed-later", "{person} signed at {signed}, later than the entry says it happened ({at}).");

    /// <summary>One person on both sides.</summary>
    public static ReasonKind SamePerson { get; } = new("custody.same-person", "{person} is on both sides; another person must take part.");

    /// <summary>Whoever signed it out signs it in.</summary>
    public static ReasonKind SignedItOut { get; } = new("custody.signed-it-out", "{person} signed it out and may not sign it back in.");

    /// <summary>The role may not sign, or the person did not hold it.</summary>
    public static ReasonKind NotEntitled { get; } = new("custody.not-entitled", "{person} signed as \"{role}\" at {at}: that role may not sign this, or the person did not hold it then.");

    /// <summary>The kit is not in any manifest.</summary>
    public static ReasonKind UnknownKit { get; } = new("custody.unknown-kit", "No manifest of kit {kit} is known.");

    /// <summary>The revision issued is not the one in force.</summary>
    public static ReasonKind OtherRevision { get; } = new("custody.other-revision", "Kit {kit} is to be issued under revision {revision}; in force then is {inForce}.");

    /// <summary>The manifests of two kits list one tool.</summary>
    public static ReasonKind ToolInTwoKits { get; } = new("custody.tool-in-two-kits", "Tool {tool} is on the manifests of {kit} and {other}; no issue until they agree.");

    /// <summary>The kit is out already.</summary>
    public static ReasonKind AlreadyIssued { get; } = new("custody.already-issued", "Kit {kit} is with {person} since {at}.");

    /// <summary>The kit is not out.</summary>
    public static ReasonKind NotIssued { get; } = new("custody.not-issued", "Kit {kit} is not signed out.");

    /// <summary>Somebody hands over what another answers for.</summary>
    public static ReasonKind NotHolder { get; } = new("custody.not-holder", "{person} hands over what {holder} answers for.");

    /// <summary>No expected return.</summary>
    public static ReasonKind NoExpectedReturn { get; } = new("custody.no-expected-return", "It does not say when it is to be back.");

    /// <summary>Due before it happens.</summary>
    public static ReasonKind DueBefore { get; } = new("custody.due-before", "It is to be back at {due}, not later than it goes out.");

    /// <summary>No joint inventory.</summary>
    public static ReasonKind NoJointInventory { get; } = new("custody.no-joint-inventory", "A transfer needs an inventory by both together before it.");

    /// <summary>The joint inventory is too old, or later than the transfer.</summary>
    public static ReasonKind JointInventoryNotFresh { get; } = new("custody.joint-inventory-not-fresh", "The joint inventory of {at} is later than the transfer or longer ago than the policy allows.");

    /// <summary>Open lines that one of the two does not acknowledge.</summary>
    public static ReasonKind OpenLineNotAcknowledged { get; } = new("custody.open-line-not-acknowledged", "Line {line} is open, and {person} has not acknowledged it.");

    /// <summary>The tool is on another receipt.</summary>
    public static ReasonKind OnReceipt { get; } = new("custody.on-receipt", "Tool {tool} is on receipt {receipt} since {at}.");

    /// <summary>The tool is not in the kit.</summary>
    public static ReasonKind NotInKit { get; } = new("custody.not-in-kit", "The manifest of kit {kit} does not list tool {tool}.");

    /// <summary>Single issue from an issued kit is banned.</summary>
    public static ReasonKind LoanFromIssuedKit { get; } = new("custody.loan-from-issued-kit", "Kit {kit} is signed out; single tools are not lent out of it here.");

    /// <summary>Chits do not count.</summary>
    public static ReasonKind ChitNotAccepted { get; } = new("custody.chit-not-accepted", "A chit does not stand for an issue record here.");

    /// <summary>The laboratory is not named.</summary>
    public static ReasonKind NoLaboratory { get; } = new("custody.no-laboratory", "A laboratory receipt must say which laboratory.");

    /// <summary>There is no such open receipt.</summary>
    public static ReasonKind NoOpenReceipt { get; } = new("custody.no-open-receipt", "No receipt {receipt} is open.");

    /// <summary>Returned into another kit.</summary>
    public static ReasonKind OtherKit { get; } = new("custody.other-kit", "The tool came out of kit {kit} and was put into {other}.");

    /// <summary>Personal tools are not allowed.</summary>
    public static ReasonKind PersonalToolNotAllowed { get; } = new("custody.personal-tool-not-allowed", "Tools of one's own are not allowed here, or only registered ones.");

    /// <summary>The zone is out of balance.</summary>
    public static ReasonKind ZoneNotBalanced { get; } = new("custody.zone-not-balanced", "Zone {zone} is out of balance: {item}, {in} in and {out} out.");

    /// <summary>No such visit goes on.</summary>
    public static ReasonKind NoOpenVisit { get; } = new("custody.no-open-visit", "No visit {visit} goes on.");

    /// <summary>It ends before it begins.</summary>
    public static ReasonKind EndBefore { get; } = new("custody.end-before", "It ends at {until}, before it begins.");

    /// <summary>A value without its unit, or a unit without a value.</summary>
    public static ReasonKind ValueWithoutUnit { get; } = new("custody.value-without-unit", "A value needs its unit, and a unit its value.");

    /// <summary>The id is taken by another entry.</summary>
    public static ReasonKind IdTaken { get; } = new("custody.id-taken", "Another entry has the id {id}.");

    /// <summary>More entries than the limit.</summary>
    public static ReasonKind TooManyEntries { get; } = new("custody.too-many-entries", "At most {limit} entries are kept.");

    /// <summary>Every kind of this list.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        NotReceived, SignedLater, SamePerson, SignedItOut, NotEntitled, UnknownKit, OtherRevision, ToolInTwoKits, AlreadyIssued, NotIssued, NotHolder,
        NoExpectedReturn, DueBefore, NoJointInventory, JointInventoryNotFresh, OpenLineNotAcknowledged, OnReceipt, NotInKit, LoanFromIssuedKit, ChitNotAccepted,
        NoLaboratory, NoOpenReceipt, OtherKit, PersonalToolNotAllowed, ZoneNotBalanced, NoOpenVisit, EndBefore, ValueWithoutUnit, IdTaken, TooManyEntries,
    ];
}
