namespace ToolLedger.Identifiers;

/// <summary>The sentence of each rule.</summary>
internal static class EpcRuleText
{
    /// <summary>Whether a fault of this rule found a character rather than a number.</summary>
    internal static bool FindsCharacter(EpcRule rule) => rule
        is EpcRule.HexDigits or EpcRule.CharacterSet or EpcRule.DecimalDigits or EpcRule.CageCode
        or EpcRule.NumberSignFirst or EpcRule.EscapeForm or EpcRule.EscapeNeeded or EpcRule.NoLeadingZero
        or EpcRule.ElementStringForm or EpcRule.DigitalLinkForm or EpcRule.ControlField or EpcRule.PatternForm
        or EpcRule.CheckDigit or EpcRule.FillerZero;

    internal static string Sentence(EpcRule rule) => rule switch
    {
        EpcRule.None => "Nothing is wrong",
        EpcRule.HexDigits => "Hexadecimal digits are expected",
        EpcRule.HeaderAssigned => "The header is reserved or not assigned",
        EpcRule.Programmed => "The tag has not been programmed",
        EpcRule.SchemeRead => "The fields of this scheme are not read by this version",
        EpcRule.EnoughBits => "There are fewer bits than the scheme needs",
        EpcRule.PaddingZero => "Bits behind the end of the coding must be zero and less than one word",
        EpcRule.PartitionKnown => "The partition value must be 0 to 6",
        EpcRule.FitsDigits => "The number needs more digits than the partition leaves",
        EpcRule.FitsBits => "The number is larger than its field can hold",
        EpcRule.EmptyFieldZero => "A field without digits must be coded as zero",
        EpcRule.ReservedZero => "Reserved bits must be zero",
        EpcRule.NotEmpty => "The value must not be empty",
        EpcRule.MaximumLength => "The value is too long for its field",
        EpcRule.CharacterSet => "The character is not in the set of its field",
        EpcRule.ZeroAfterEnd => "After the end of the string only zero bits may follow",
        EpcRule.Terminator => "The terminator of the string is missing",
        EpcRule.NumericStringMark => "A numeric string is stored with a 1 in front of at least one digit",
        EpcRule.DecimalDigits => "Decimal digits are expected",
        EpcRule.NoLeadingZero => "The number must not begin with zero in this coding",
        EpcRule.DigitCount => "The number of digits is not the one required",
        EpcRule.CompanyPrefixLength => "A company prefix has 6 to 12 digits",
        EpcRule.CageCode => "A CAGE code or DoDAAC has 5 or 6 digits and capital letters without I and O",
        EpcRule.NumberSignFirst => "The number sign may only begin a serial number and not stand alone",
        EpcRule.FilterRange => "The filter value does not fit its bits",
        EpcRule.UriPrefix => "The URI does not begin as it must",
        EpcRule.SchemeName => "There is no scheme of this name",
        EpcRule.ComponentCount => "The URI does not have the components of its scheme",
        EpcRule.EscapeForm => "An escape is a percent sign and two hexadecimal digits",
        EpcRule.EscapeNeeded => "The character must be written as an escape",
        EpcRule.ControlField => "The control field is not one the standard names",
        EpcRule.SchemeFitsKind => "The scheme does not code this kind of identity",
        EpcRule.CheckDigit => "The check digit does not agree",
        EpcRule.PieceOfTotal => "The piece must be 1 to the number of pieces",
        EpcRule.ApplicationIdentifierKnown => "The application identifier is not known here",
        EpcRule.KeyPresent => "A key is missing among the application identifiers",
        EpcRule.NoRepetition => "An application identifier occurs twice",
        EpcRule.CompanyPrefixLengthGiven => "The length of the company prefix must be given",
        EpcRule.KeyAllowed => "The number is for restricted circulation and must not become an EPC",
        EpcRule.ElementStringForm => "The text is not an element string",
        EpcRule.DigitalLinkForm => "The text is not a Digital Link",
        EpcRule.PatternForm => "The pattern component is not valid",
        EpcRule.TextLength => "The text is too long",
        EpcRule.LengthField => "The length field does not agree with the bits that follow",
        EpcRule.ToggleClear => "The memory holds an identifier of another family than EPC",
        EpcRule.SerialGiven => "The serial number is mandatory",
        EpcRule.FillerZero => "The digit in front of the key must be zero",
        _ => "Unknown rule",
    };
}
