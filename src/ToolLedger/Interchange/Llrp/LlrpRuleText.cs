using System;

namespace ToolLedger.Interchange.Llrp;

/// <summary>The English sentences for the rules of a stream.</summary>
internal static class LlrpRuleText
{
    internal static string Sentence(LlrpRule rule) => rule switch
    {
        LlrpRule.UnsupportedVersion => "The protocol version must be 1 to 3",
        LlrpRule.MessageTooShort => "A message is at least 10 bytes long",
        LlrpRule.MessageTooLong => "The message is longer than the limit",
        LlrpRule.StreamCut => "The stream ended inside a message",
        LlrpRule.ParameterTooShort => "The parameter is shorter than what it must hold",
        LlrpRule.ParameterOverrun => "The parameter ends behind what encloses it",
        LlrpRule.UnknownParameter => "A parameter without a length has an unknown type",
        LlrpRule.StrayBytes => "Bytes are left over behind the last parameter",
        LlrpRule.RepeatedParameter => "The parameter may stand there once",
        LlrpRule.CountMismatch => "A count does not fit the length of its parameter",
        LlrpRule.NoTag => "A tag report must name a tag",
        LlrpRule.TwoTags => "A tag report must name one tag",
        LlrpRule.MissingData => "The message lacks the parameter it must hold",
        LlrpRule.TooManyEvents => "The notification holds too many events",
        LlrpRule.NoTime => "The tag report has no time by a clock that can be placed",
        LlrpRule.TimeOutOfRange => "The time is outside the years 1970 to 2999",
        LlrpRule.TimesReversed => "The last instant is before the first",
        LlrpRule.AntennaOutOfRange => "An antenna is numbered from 1 to 255",
        LlrpRule.TidTooLong => "A TID has at most 2048 bits",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "There is no sentence for this rule."),
    };
}
