using System;
using ToolLedger.Identifiers.Gen2;
using ToolLedger.Identifiers.Schemes;

namespace ToolLedger.Identifiers.Tests;

/// <summary>
/// What must hold for any input at all: nothing throws, and whatever is accepted survives the way through every view.
/// The first byte chooses what the rest is taken for.
/// </summary>
internal static class AnyInput
{
    internal static void Check(ReadOnlySpan<byte> input)
    {
        if (input.Length == 0)
        {
            return;
        }

        ReadOnlySpan<byte> rest = input.Slice(1);
        switch (input[0] % 8)
        {
            case 0: CheckBits(rest, rest.Length * 8); break;
            case 1: CheckBits(rest, Math.Max(0, (rest.Length * 8) - (input[0] >> 3 & 7))); break;
            case 2: CheckTagUri(rest); break;
            case 3: CheckPureIdentity(rest); break;
            case 4: CheckElementString(rest, 6 + (input[0] >> 3) % 7); break;
            case 5: CheckDigitalLink(rest, 6 + (input[0] >> 3) % 7); break;
            case 6: CheckText(rest); break;
            default: CheckMemory(rest); break;
        }
    }

    private static void CheckBits(ReadOnlySpan<byte> bytes, int bitCount)
    {
        Epc epc = Epc.FromBytes(bytes, bitCount);
        Must(Epc.TryParse(epc.ToString().AsSpan(), out Epc hex) && hex == Epc.FromBytes(Bytes(epc), (bitCount + 3) / 4 * 4), "hex");
        Must(Epc.TryParseRawUri(epc.ToRawUri().AsSpan(), out Epc raw, out _) && raw == epc.ToWholeWords(), "raw URI");
        if (!EpcFields.TryDecode(epc, EpcDecoding.Lenient, out EpcFields fields, out EpcFault fault))
        {
            Must(fault.Rule != EpcRule.None && epc.ToTagUri().StartsWith("urn:epc:raw:", StringComparison.Ordinal), "fault");
            Must(!EpcFields.TryDecode(epc, EpcDecoding.Strict, out _, out _), "strict accepts what lenient refuses");
            return;
        }

        CheckFields(fields);
        Epc canonical = fields.ToEpc();
        Must(bitCount >= canonical.BitCount && canonical == Epc.FromBytes(Bytes(epc), canonical.BitCount), "encode(decode(bits)) = bits");
    }

    private static void CheckFields(in EpcFields fields)
    {
        string uri = fields.ToTagUri();
        Must(EpcFields.TryParseTagUri(uri.AsSpan(), out EpcFields back, out _) && back == fields, uri);
        Must(EpcFields.TryDecode(fields.ToEpc(), EpcDecoding.Strict, out back, out _) && back == fields, uri);
        Must(EpcFields.TryDecode(fields.ToEpc().ToWholeWords(), EpcDecoding.Strict, out back, out _) && back == fields, uri);
        CheckIdentity(fields.Identity);
    }

    private static void CheckIdentity(in EpcIdentity identity)
    {
        string uri = identity.ToUri();
        Must(EpcIdentity.TryParseUri(uri.AsSpan(), out EpcIdentity back, out _) && back == identity, uri);
        bool key = identity.TryGetKey(out Giai giai);
        Must(key == (identity.Kind == EpcKind.Giai) && (!key || giai.Identity == identity), "typed key");
        if (identity.ToElementString().Length == 0 || identity.Piece > identity.Total)
        {
            return;
        }

        CompanyPrefixLength length = CompanyPrefixLength.FromDigits(identity.CompanyPrefix.Length);
        string text = identity.ToElementString();
        Must(EpcIdentity.TryParseElementString(text.AsSpan(), length, EpcDecoding.Lenient, out back, out _) && back == identity, text);
        text = identity.ToElementString(ElementStringForm.Raw);
        Must(EpcIdentity.TryParseElementString(text.AsSpan(), length, EpcDecoding.Lenient, out back, out _) && back == identity, text);
        text = identity.ToDigitalLink();
        Must(EpcIdentity.TryParseDigitalLink(text.AsSpan(), length, EpcDecoding.Lenient, out back, out _) && back == identity, text);
        Must(EpcIdentity.TryFromElements(identity.ToElements(), length, EpcDecoding.Lenient, out back, out _) && back == identity, text);
    }

    private static void CheckTagUri(ReadOnlySpan<byte> text)
    {
        var hex = new byte[256];
        bool converted = EpcFields.TryConvertTagUriToHex(text, hex, out int written);
        bool parsed = EpcFields.TryParseTagUri(text, out EpcFields fields, out EpcFault fault);
        Must(converted == parsed, "tag URI to hex, and to fields");
        if (parsed)
        {
            CheckFields(fields);
            Must(Epc.TryParse(hex.AsSpan(0, written), out Epc epc) && Same(epc.ToTagUri(), fields.ToTagUri()), "tag URI to hex at once");
        }
        else
        {
            Must(fault.Rule != EpcRule.None && fault.ToString().Length > 0, "fault");
        }
    }

    private static void CheckPureIdentity(ReadOnlySpan<byte> text)
    {
        if (EpcIdentity.TryParseUri(text, out EpcIdentity identity, out _))
        {
            CheckIdentity(identity);
        }
    }

    private static void CheckElementString(ReadOnlySpan<byte> text, int prefix)
    {
        if (EpcIdentity.TryParseElementString(
            text, CompanyPrefixLength.FromDigits(prefix), EpcDecoding.Lenient, out EpcIdentity identity, out _))
        {
            CheckIdentity(identity);
        }
    }

    private static void CheckDigitalLink(ReadOnlySpan<byte> text, int prefix)
    {
        if (EpcIdentity.TryParseDigitalLink(
            text, CompanyPrefixLength.FromDigits(prefix), EpcDecoding.Lenient, out EpcIdentity identity, out _))
        {
            CheckIdentity(identity);
        }
    }

    private static void CheckText(ReadOnlySpan<byte> text)
    {
        var characters = new char[text.Length];
        for (int i = 0; i < text.Length; i++)
        {
            characters[i] = (char)text[i];
        }

        bool fromBytes = Epc.TryParse(text, out Epc epc);
        Must(Epc.TryParse(characters, out Epc same) == fromBytes && epc == same, "hex of bytes and of characters");
        if (EpcPattern.TryParse(characters, out EpcPattern? pattern, out _))
        {
            Must(EpcPattern.TryParse(pattern!.ToString().AsSpan(), out EpcPattern? back, out _) && back!.Equals(pattern), "pattern");
        }

        _ = Tid.TryParse(characters, out _);
        _ = TidFields.TryParseStidUri(characters, out _, out _);
        if (EpcMemory.TryParseUri(characters, out EpcMemory memory, out _))
        {
            Must(EpcMemory.TryParseUri(memory.ToTagUri().AsSpan(), out EpcMemory back, out _) && Same(back.ToTagUri(), memory.ToTagUri()), "memory URI");
        }
    }

    private static void CheckMemory(ReadOnlySpan<byte> bytes)
    {
        var words = new ushort[bytes.Length / 2];
        for (int i = 0; i < words.Length; i++)
        {
            words[i] = (ushort)((bytes[2 * i] << 8) | bytes[(2 * i) + 1]);
        }

        if (EpcMemory.TryFromAnswer(words, out EpcMemory memory, out _))
        {
            var written = new ushort[words.Length];
            Must(memory.TryWriteAnswer(written, out int count) && written.AsSpan(0, count).SequenceEqual(words.AsSpan(0, count)), "answer");
            Must(EpcMemory.TryParseUri(memory.ToTagUri().AsSpan(), out EpcMemory back, out _) && Same(back.ToTagUri(), memory.ToTagUri()), "memory");
        }

        if (bytes.Length <= Tid.MaxBitCount / 8 && TidFields.TryDecode(Tid.FromBytes(bytes, bytes.Length * 8), out TidFields tid, out _)
            && tid.TryGetStidUri(out string uri))
        {
            Must(TidFields.TryParseStidUri(uri.AsSpan(), out TidFields back, out _) && back.Serial == tid.Serial, uri);
        }
    }

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.Ordinal);

    private static byte[] Bytes(Epc epc)
    {
        var bytes = new byte[epc.ByteCount];
        epc.TryWriteBytes(bytes, out _);
        return bytes;
    }

    private static void Must(bool holds, string what)
    {
        if (!holds)
        {
            throw new InvalidOperationException("Does not hold: " + what);
        }
    }
}
