using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Holds;

/// <summary>Why an entry about a hold is refused, and what is wrong with a hold; the code of a rule never changes its meaning.</summary>
/// <remarks>A refusal changes nothing: a hold stands until a release takes effect. Thread-safe: immutable.</remarks>
public static class HoldRules
{
    /// <summary>No such hold stands.</summary>
    public static ReasonKind NotHeld { get; } = new("hold.not-held", "No hold {hold} stands at that time.");

    /// <summary>The role may not do this, or the person did not hold it.</summary>
    public static ReasonKind NotEntitled { get; } = new("hold.not-entitled", "{person} signed as \"{role}\" at {at}: that role may not do this, or the person did not hold it then.");

    /// <summary>The declarer may not release.</summary>
    public static ReasonKind DeclaredIt { get; } = new("hold.declared-it", "{person} declared it missing and may not release the hold.");

    /// <summary>Somebody was not told.</summary>
    public static ReasonKind NotTold { get; } = new("hold.not-told", "{who} has not been told.");

    /// <summary>Somebody was not told that it was found.</summary>
    public static ReasonKind NotToldFound { get; } = new("hold.not-told-found", "{who} has not been told since it was found.");

    /// <summary>A step of the search was not made.</summary>
    public static ReasonKind NotSearched { get; } = new("hold.not-searched", "The search step \"{step}\" is not on record.");

    /// <summary>Released as found without a declaration that stands.</summary>
    public static ReasonKind NotFound { get; } = new("hold.not-found", "No declaration that it was found stands.");

    /// <summary>Released as not found although a declaration that it was found stands.</summary>
    public static ReasonKind IsFound { get; } = new("hold.is-found", "The declaration {found} that it was found stands; withdraw it or release on its ground.");

    /// <summary>The search goes on.</summary>
    public static ReasonKind SearchGoesOn { get; } = new("hold.search-goes-on", "No decision to discontinue the search is on record.");

    /// <summary>Nothing was left in place.</summary>
    public static ReasonKind NothingLeft { get; } = new("hold.nothing-left-in-place", "No decision to leave it in place is on record.");

    /// <summary>The mark is another tool's, or was not read.</summary>
    public static ReasonKind OtherMark { get; } = new("hold.other-mark", "Tool {tool} carries the mark {mark}; read was {read}.");

    /// <summary>The hold is about something else than what was found.</summary>
    public static ReasonKind OtherItem { get; } = new("hold.other-item", "Hold {hold} is about tool {tool}; found was {found}.");

    /// <summary>No such declaration stands.</summary>
    public static ReasonKind NoFoundDeclaration { get; } = new("hold.no-found-declaration", "No declaration {found} that something was found stands.");

    /// <summary>No such item is on the list.</summary>
    public static ReasonKind NoSuchItem { get; } = new("hold.no-such-item", "No item {item} is left in place or on the drop log.");

    /// <summary>Last seen after it was declared.</summary>
    public static ReasonKind SeenLater { get; } = new("hold.seen-later", "It is said to have been seen at {seen}, later than the entry itself.");

    /// <summary>Over its time: notifications.</summary>
    public static ReasonKind LateNotification { get; } = new("hold.late-notification", "{who} was not told within {limit} of the declaration");

    /// <summary>Over its time: the hold.</summary>
    public static ReasonKind LateHold { get; } = new("hold.over-time", "stands for {elapsed}, longer than {limit}");

    /// <summary>Over its time: the declaration.</summary>
    public static ReasonKind LateDeclaration { get; } = new("hold.late-declaration", "was declared {elapsed} after the last positive accounting, later than {limit}");

    /// <summary>Every kind of this list.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        NotHeld, NotEntitled, DeclaredIt, NotTold, NotToldFound, NotSearched, NotFound, IsFound, SearchGoesOn, NothingLeft, OtherMark, OtherItem, NoFoundDeclaration,
        NoSuchItem, SeenLater, LateNotification, LateHold, LateDeclaration,
    ];
}
