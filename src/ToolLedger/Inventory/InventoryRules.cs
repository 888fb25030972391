using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Inventory;

/// <summary>The rules an entry of an <see cref="InventorySheet"/> must keep; the code of a rule never changes its meaning.</summary>
/// <remarks>A statement by a person counts only if it says what was seen, by whom, when and (for a sighting) where: "seen it" alone is refused. Thread-safe: immutable.</remarks>
public static class InventoryRules
{
    /// <summary>A sighting names no tool.</summary>
    public static ReasonKind SightingWithoutTool { get; } = new("inventory.sighting-without-tool", "A sighting must name the tool that was seen.");

    /// <summary>A sighting does not give the mark that was read on the tool.</summary>
    public static ReasonKind SightingWithoutMark { get; } = new("inventory.sighting-without-mark", "A sighting must give the mark that was read on the tool.");

    /// <summary>A sighting names no person.</summary>
    public static ReasonKind SightingNotSigned { get; } = new("inventory.sighting-not-signed", "A sighting must name the person who looked.");

    /// <summary>A sighting has no time, or one outside the years 1970 to 2999.</summary>
    public static ReasonKind SightingWithoutTime { get; } = new("inventory.sighting-without-time", "A sighting must say when the tool was seen, in the years 1970 to 2999.");

    /// <summary>A sighting names no place.</summary>
    public static ReasonKind SightingWithoutPlace { get; } = new("inventory.sighting-without-place", "A sighting must say where the tool was seen.");

    /// <summary>A mark is too long or holds characters that cannot be read on a tool.</summary>
    public static ReasonKind BadMark { get; } = new("inventory.bad-mark", "The mark is not 1 to 32 printable characters as read on a tool: {fault}");

    /// <summary>A count names no kit.</summary>
    public static ReasonKind CountWithoutKit { get; } = new("inventory.count-without-kit", "A count must name the kit whose line was counted.");

    /// <summary>A count names no line, or one outside 1 to 9999.</summary>
    public static ReasonKind CountWithoutLine { get; } = new("inventory.count-without-line", "A count must name the line that was counted, 1 to 9999.");

    /// <summary>A count says no quantity.</summary>
    public static ReasonKind CountWithoutQuantity { get; } = new("inventory.count-without-quantity", "A count must say how many were counted.");

    /// <summary>A count says no unit.</summary>
    public static ReasonKind CountWithoutUnit { get; } = new("inventory.count-without-unit", "A count must say in which unit was counted.");

    /// <summary>A counted quantity is negative, too large or too fine.</summary>
    public static ReasonKind CountOutOfRange { get; } = new("inventory.count-out-of-range", "A counted quantity must be 0 to 1000000 with at most 3 decimals; this is {quantity}.");

    /// <summary>A count names no person.</summary>
    public static ReasonKind CountNotSigned { get; } = new("inventory.count-not-signed", "A count must name the person who counted.");

    /// <summary>A count has no time, or one outside the years 1970 to 2999.</summary>
    public static ReasonKind CountWithoutTime { get; } = new("inventory.count-without-time", "A count must say when it was made, in the years 1970 to 2999.");

    /// <summary>A piece count names no tool.</summary>
    public static ReasonKind PieceCountWithoutTool { get; } = new("inventory.piece-count-without-tool", "A piece count must name the tool whose pieces were counted.");

    /// <summary>A stored piece count neither gives a number nor says that it is not known.</summary>
    public static ReasonKind PieceCountWithoutNumber { get; } = new("inventory.piece-count-without-number", "A piece count must give the number of pieces, or null where the number is not known.");

    /// <summary>A number of pieces is outside 0 to 999.</summary>
    public static ReasonKind PieceCountOutOfRange { get; } = new("inventory.piece-count-out-of-range", "A number of pieces must be a whole number from 0 to 999; this is {pieces}.");

    /// <summary>A piece count names no person.</summary>
    public static ReasonKind PieceCountNotSigned { get; } = new("inventory.piece-count-not-signed", "A piece count must name the person who counted.");

    /// <summary>A piece count has no time, or one outside the years 1970 to 2999.</summary>
    public static ReasonKind PieceCountWithoutTime { get; } = new("inventory.piece-count-without-time", "A piece count must say when it was made, in the years 1970 to 2999.");

    /// <summary>The person who counted is named as the witness too.</summary>
    public static ReasonKind WitnessIsCounter { get; } = new("inventory.witness-is-counter", "The witness must be another person than {person}, who counted.");

    /// <summary>A signature names no person.</summary>
    public static ReasonKind SignatureWithoutPerson { get; } = new("inventory.signature-without-person", "A signature must name the person who signed.");

    /// <summary>A signature has no time, or one outside the years 1970 to 2999.</summary>
    public static ReasonKind SignatureWithoutTime { get; } = new("inventory.signature-without-time", "A signature must say when it was given, in the years 1970 to 2999.");

    /// <summary>An entry about a kit or one of its lines names no kit.</summary>
    public static ReasonKind EntryWithoutKit { get; } = new("inventory.entry-without-kit", "The entry must name the kit it is about.");

    /// <summary>An entry about a line names none, or one outside 1 to 9999.</summary>
    public static ReasonKind EntryWithoutLine { get; } = new("inventory.entry-without-line", "The entry must name the line it is about, 1 to 9999.");

    /// <summary>An entry about a tool names none.</summary>
    public static ReasonKind EntryWithoutTool { get; } = new("inventory.entry-without-tool", "The entry must name the tool it is about.");

    /// <summary>An entry names no person.</summary>
    public static ReasonKind EntryNotSigned { get; } = new("inventory.entry-not-signed", "The entry must name the person who makes it.");

    /// <summary>An entry has no time, or one outside the years 1970 to 2999.</summary>
    public static ReasonKind EntryWithoutTime { get; } = new("inventory.entry-without-time", "The entry must say when, in the years 1970 to 2999.");

    /// <summary>An annotation of a shortage says no quantity, or another annotation says one.</summary>
    public static ReasonKind ShortageWithoutQuantity { get; } = new("inventory.shortage-without-quantity", "An annotation of kind short must say by how much: shortBy, more than 0, and unit. No other annotation says shortBy.");

    /// <summary>A job record says no unit.</summary>
    public static ReasonKind UseWithoutUnit { get; } = new("inventory.use-without-unit", "A job record must say the unit of what was used.");

    /// <summary>A stored job record says neither how much was used nor how much was scrapped.</summary>
    public static ReasonKind UseOfNothing { get; } = new("inventory.use-of-nothing", "A job record must say how much was used or scrapped; 0 withdraws what an earlier record of the job said.");

    /// <summary>A joining makes more whole items than its parts can.</summary>
    public static ReasonKind TooFewParts { get; } = new("inventory.too-few-parts", "{parts} parts cannot make {wholes} whole items: each is made of two parts or more.");

    /// <summary>A sheet holds more entries of one kind than it may.</summary>
    public static ReasonKind TooManyEntries { get; } = new("inventory.too-many-entries", "A sheet holds at most {limit} entries of one kind; here are {count}.");

    /// <summary>A seal that was applied before the inventory it is said to follow.</summary>
    public static ReasonKind SealBeforeInventory { get; } = new("inventory.seal-before-inventory", "A seal is applied after the inventory it closes, not before.");

    /// <summary>An entry about a kit that no list at hand describes. Found when the sheet is checked against the lists.</summary>
    public static ReasonKind NoSuchKit { get; } = new("inventory.no-such-kit", "No list of kit {kit} that holds at {time} is at hand.");

    /// <summary>An entry about a line that the list does not have. Found when the sheet is checked against the lists.</summary>
    public static ReasonKind NoSuchLine { get; } = new("inventory.no-such-line", "Revision {revision} of kit {kit} has no line {line}.");

    /// <summary>An entry about a tool that no list names. Found when the sheet is checked against the lists.</summary>
    public static ReasonKind ToolOnNoList { get; } = new("inventory.tool-on-no-list", "The tool {tool} is on no list that holds at {time}.");

    /// <summary>A quantity in another unit than the line is kept in. Found when the sheet is checked against the lists.</summary>
    public static ReasonKind OtherUnitThanLine { get; } = new("inventory.other-unit-than-line", "Line {line} is kept in the unit \"{unit}\", and this is in \"{found}\"; nothing is converted.");

    /// <summary>A job record of a line that is no consumable. Found when the sheet is checked against the lists.</summary>
    public static ReasonKind UseOfNoConsumable { get; } = new("inventory.use-of-no-consumable", "Line {line} of kit {kit} is no consumable, so no job uses it up.");

    /// <summary>A tool in place of another that the signed list does not name for that line. Found when the sheet is checked against the lists.</summary>
    public static ReasonKind NotAnAlternate { get; } = new("inventory.not-an-alternate", "The tool {tool} is neither the tool of line {line} of kit {kit} nor one of its alternates.");

    /// <summary>A sighting by a mark that several tools of the kit carry. Found when the sheet is checked against the lists.</summary>
    public static ReasonKind MarkOfSeveral { get; } = new("inventory.mark-of-several", "The mark {mark} is on {count} tools of kit {kit} and does not identify {tool}: say its serial number, size or description, or let its tag be read.");

    /// <summary>All rules of this room, in the order above.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        SightingWithoutTool, SightingWithoutMark, SightingNotSigned, SightingWithoutTime, SightingWithoutPlace, BadMark,
        CountWithoutKit, CountWithoutLine, CountWithoutQuantity, CountWithoutUnit, CountOutOfRange, CountNotSigned, CountWithoutTime,
        PieceCountWithoutTool, PieceCountWithoutNumber, PieceCountOutOfRange, PieceCountNotSigned, PieceCountWithoutTime,
        WitnessIsCounter, SignatureWithoutPerson, SignatureWithoutTime,
        EntryWithoutKit, EntryWithoutLine, EntryWithoutTool, EntryNotSigned, EntryWithoutTime,
        ShortageWithoutQuantity, UseWithoutUnit, UseOfNothing, TooFewParts, TooManyEntries, SealBeforeInventory,
        NoSuchKit, NoSuchLine, ToolOnNoList, OtherUnitThanLine, UseOfNoConsumable, NotAnAlternate, MarkOfSeveral,
    ];
}
