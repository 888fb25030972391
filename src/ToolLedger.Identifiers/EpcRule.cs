namespace ToolLedger.Identifiers;

/// <summary>The rules that an identifier can break. The list is closed; members are added at the end.</summary>
public enum EpcRule
{
    /// <summary>No rule is broken.</summary>
    None = 0,

    /// <summary>The text must be hexadecimal digits.</summary>
    HexDigits,

    /// <summary>The header must be one that the standard assigns to a coding scheme (TDS 2.3, Table 14-1).</summary>
    HeaderAssigned,

    /// <summary>A tag that was never programmed has no identity: its header is 00h.</summary>
    Programmed,

    /// <summary>This version reads the scheme's name only, not its fields.</summary>
    SchemeRead,

    /// <summary>There must be as many bits as the coding scheme needs.</summary>
    EnoughBits,

    /// <summary>Strict decoding only: bits behind the end of the coding must be zero and fill less than one word.</summary>
    PaddingZero,

    /// <summary>The partition value must be 0 to 6.</summary>
    PartitionKnown,

    /// <summary>The number must fit the digits that the partition leaves for it.</summary>
    FitsDigits,

    /// <summary>The number must fit the bits of its field, or its stated limit.</summary>
    FitsBits,

    /// <summary>A field without digits must be coded as zero.</summary>
    EmptyFieldZero,

    /// <summary>Reserved bits must be zero.</summary>
    ReservedZero,

    /// <summary>The value must not be empty.</summary>
    NotEmpty,

    /// <summary>The value must not be longer than its field allows.</summary>
    MaximumLength,

    /// <summary>The character must be in the set of its field (TDS 2.3, Tables A-1 and G-1).</summary>
    CharacterSet,

    /// <summary>After the end of a string only zero bits may follow.</summary>
    ZeroAfterEnd,

    /// <summary>A string of variable length must be closed by its terminator.</summary>
    Terminator,

    /// <summary>A numeric string is stored with the digit 1 in front and has at least one more digit.</summary>
    NumericStringMark,

    /// <summary>The value must be decimal digits.</summary>
    DecimalDigits,

    /// <summary>A number must not begin with zero unless it is zero; choose a coding that keeps zeros.</summary>
    NoLeadingZero,

    /// <summary>The value must have exactly the stated number of digits.</summary>
    DigitCount,

    /// <summary>A company prefix has 6 to 12 digits.</summary>
    CompanyPrefixLength,

    /// <summary>A CAGE code has 5 characters and a DoDAAC 6: digits and capital letters without I and O.</summary>
    CageCode,

    /// <summary>The number sign may only begin a serial number and not stand alone.</summary>
    NumberSignFirst,

    /// <summary>The filter value must fit its bits.</summary>
    FilterRange,

    /// <summary>The URI must begin as its family does.</summary>
    UriPrefix,

    /// <summary>The URI must name a scheme that exists.</summary>
    SchemeName,

    /// <summary>The URI must have exactly the components of its scheme.</summary>
    ComponentCount,

    /// <summary>An escape is a percent sign and two hexadecimal digits.</summary>
    EscapeForm,

    /// <summary>The character must be written as an escape here.</summary>
    EscapeNeeded,

    /// <summary>A control field must be one that the standard names, in its order and form.</summary>
    ControlField,

    /// <summary>The kind of identity must be one that the scheme codes.</summary>
    SchemeFitsKind,

    /// <summary>The check digit must agree with the digits before it.</summary>
    CheckDigit,

    /// <summary>The number of a piece must be 1 to the number of pieces.</summary>
    PieceOfTotal,

    /// <summary>The application identifier must be one that is known here.</summary>
    ApplicationIdentifierKnown,

    /// <summary>The application identifiers must contain a key, and each qualifier its key.</summary>
    KeyPresent,

    /// <summary>An application identifier must not occur twice.</summary>
    NoRepetition,

    /// <summary>The length of the company prefix must be given: the value does not contain it.</summary>
    CompanyPrefixLengthGiven,

    /// <summary>The number is for restricted circulation or a serial publication and must not become an EPC.</summary>
    KeyAllowed,

    /// <summary>The text must have the form of an element string.</summary>
    ElementStringForm,

    /// <summary>The text must have the form of a Digital Link.</summary>
    DigitalLinkForm,

    /// <summary>A pattern component is a value, an asterisk or a range of numbers.</summary>
    PatternForm,

    /// <summary>The text must not be longer than the stated limit.</summary>
    TextLength,

    /// <summary>The length field must agree with the bits that follow.</summary>
    LengthField,

    /// <summary>The toggle bit says that the memory holds another family's identifier, not an EPC.</summary>
    ToggleClear,

    /// <summary>The serial number is mandatory: without it the key names a class.</summary>
    SerialGiven,

    /// <summary>The digit in front of the key must be zero.</summary>
    FillerZero,
}
