using System;
using System.Numerics;
using System.Text;
using ToolLedger.Tools;

namespace ToolLedger.Interchange;

/// <summary>Reads tags written as text, and keeps the latest ones so that a text met again needs no new string.</summary>
internal sealed class TagTextCache
{
    private const int SlotCount = 4_096;
    private const int TextLengthMax = 16_400;

    // The tag that a reader reports with an EPC of no bits: said in so many words, and not by a field that is empty.
    private const string WithoutBits = "epc:";

    private readonly ReadTagForm _form;
    private readonly byte[]?[] _texts = new byte[SlotCount][];
    private readonly TagId[] _tags = new TagId[SlotCount];

    internal TagTextCache(ReadTagForm form) => _form = form;

    internal bool TryRead(ReadOnlySpan<byte> text, out TagId tag)
    {
        uint hash = 17;
        foreach (byte unit in text)
        {
            hash = (BitOperations.RotateLeft(hash, 5) ^ unit) * 0x9E3779B1;
        }

        uint slot = (hash >> 12) & (SlotCount - 1);
        if (_texts[slot] is { } known && text.SequenceEqual(known))
        {
            tag = _tags[slot];
            return true;
        }

        if (!TryParse(text, out tag))
        {
            return false;
        }

        _texts[slot] = text.ToArray();
        _tags[slot] = tag;
        return true;
    }

    private bool TryParse(ReadOnlySpan<byte> text, out TagId tag)
    {
        tag = default;
        if (text.Length > TextLengthMax || !System.Text.Unicode.Utf8.IsValid(text))
        {
            return false;
        }

        string characters = Encoding.UTF8.GetString(text);
        return _form == ReadTagForm.PlainText
            ? TagId.TryParse("text:" + characters, out tag)
            : string.Equals(characters, WithoutBits, StringComparison.Ordinal) || TagId.TryParse(characters, out tag);
    }
}
