using System;
using System.Linq;
using ToolLedger.Identifiers;
using ToolLedger.Identifiers.Gen2;

namespace TagInspect;

/// <summary>From a request to an answer.</summary>
internal static class Inspector
{
    private const string EpcStart = "epc:";

    internal static Answer Inspect(Request request) => request.Input switch
    {
        "hex" or "memoryHex" => InspectBits(request),
        "tagUri" => InspectUri(request),
        "pureIdentity" => EpcIdentity.TryParseUri(request.Value, out EpcIdentity identity, out EpcFault fault)
            ? Code(request, identity)
            : Answer.Refused(fault),
        "elementString" => EpcIdentity.TryParseElementString(
            request.Value, Length(request), EpcDecoding.Lenient, out EpcIdentity identity, out EpcFault fault)
            ? Code(request, identity)
            : Answer.Refused(fault),
        "digitalLink" => EpcIdentity.TryParseDigitalLink(
            request.Value, Length(request), EpcDecoding.Lenient, out EpcIdentity identity, out EpcFault fault)
            ? Code(request, identity)
            : Answer.Refused(fault),
        "ai" => EpcIdentity.TryFromElements(
            request.Elements.ToArray(), Length(request), EpcDecoding.Lenient, out EpcIdentity identity, out EpcFault fault)
            ? Code(request, identity)
            : Answer.Refused(fault),
        _ => Answer.Refused("Input", "The input must be hex, memoryHex, tagUri, pureIdentity, elementString, digitalLink or ai."),
    };

    /// <summary>What an item of plain text is taken for.</summary>
    internal static string InputOf(string item) =>
        item.StartsWith("urn:epc:id:", StringComparison.Ordinal) || item.StartsWith("urn:epc:class:", StringComparison.Ordinal) ? "pureIdentity"
        : item.StartsWith("urn:", StringComparison.Ordinal) ? "tagUri"
        : item.StartsWith("http", StringComparison.OrdinalIgnoreCase) ? "digitalLink"
        : item.Length > 0 && item.All(char.IsAsciiHexDigit) ? "hex"
        : item.Length > 0 && (item[0] is '(' or ']' || char.IsAsciiDigit(item[0])) ? "elementString"
        : "none";

    /// <summary>The answer to one item of plain text, whose form it is told by.</summary>
    internal static Answer InspectPlain(string item, Options options)
    {
        // As the library prints an EPC beside other things.
        string value = item.StartsWith(EpcStart, StringComparison.Ordinal) ? item[EpcStart.Length..] : item;
        string input = InputOf(value);
        if (input is "none")
        {
            return Answer.Refused(
                "Input", "This is no form that is understood: hexadecimal EPC memory, also behind epc:; urn:epc:...; an element string such as (01)...; a Digital Link that begins with http.");
        }

        Answer answer = Inspect(new Request { Input = input, Value = value, PrefixLength = options.PrefixLength, Scheme = options.Scheme, Filter = options.Filter });
        return answer.Fault.Rule == EpcRule.CompanyPrefixLengthGiven
            ? answer with { Message = answer.Message + " State it with --gcp N." }
            : answer;
    }

    private static Answer InspectBits(Request request)
    {
        if (!Epc.TryParse(request.Value, out Epc epc))
        {
            _ = EpcFields.TryDecodeHex(request.Value, EpcDecoding.Lenient, out _, out EpcFault notHex);
            return Answer.Refused(notHex);
        }

        if (request.Bits is { } count && count >= 0 && count < epc.BitCount)
        {
            Span<byte> bytes = stackalloc byte[(Epc.MaxBitCount + 7) / 8];
            epc.TryWriteBytes(bytes, out int length);
            epc = Epc.FromBytes(bytes[..length], count);
        }

        return EpcFields.TryDecode(epc, EpcDecoding.Lenient, out EpcFields fields, out EpcFault fault)
            ? Answer.Of(fields)
            : Answer.Refused(fault, epc.ToRawUri());
    }

    private static Answer InspectUri(Request request)
    {
        if (!EpcMemory.TryParseUri(request.Value, out EpcMemory memory, out EpcFault fault))
        {
            return Answer.Refused(fault);
        }

        return memory.TryDecode(EpcDecoding.Lenient, out EpcFields fields, out fault)
            ? Answer.Of(fields)
            : Answer.Refused(fault, memory.ToRawUri());
    }

    private static CompanyPrefixLength Length(Request request) =>
        request.PrefixLength is { } digits and >= 4 and <= 12 ? CompanyPrefixLength.FromDigits(digits) : default;

    private static Answer Code(Request request, EpcIdentity identity)
    {
        if (request.Scheme is null)
        {
            return new Answer { Identity = identity };
        }

        if (!EpcSchemeName.TryParse(request.Scheme, out EpcScheme scheme))
        {
            return Answer.Refused(nameof(EpcRule.SchemeName), "There is no scheme of this name whose fields are read.");
        }

        return EpcFields.TryCreate(identity, scheme, request.Filter, out EpcFields fields, out EpcFault fault)
            ? Answer.Of(fields)
            : Answer.Refused(fault);
    }
}
