using System;
using System.Buffers.Text;
using System.Collections.Generic;
using System.Linq;
using System.Security.Cryptography;
using System.Text;
using ToolLedger.Identifiers;
using ToolLedger.Records;

namespace ToolLedger.Reads;

/// <summary>
/// Hashes the evidence of a session as canonical JSON (RFC 8785) without holding the text: members in order, whole numbers
/// only, tags in order. Times are whole ticks of 100 ns after the start of the session.
/// </summary>
internal sealed class EvidenceDigest : IDisposable
{
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private readonly byte[] _buffer = new byte[8_192];
    private readonly long _from;
    private int _used;

    private EvidenceDigest(long from) => _from = from;

    internal static object Of(SessionFacts facts, SortedTags tags)
    {
        using var digest = new EvidenceDigest(facts.Presentation.From.UtcTicks);
        digest.Write(facts, tags);
        return digest.Finish();
    }

    public void Dispose() => _hash.Dispose();

    private void Write(SessionFacts facts, SortedTags tags)
    {
        Raw("{\"clockOffsetAfter\":"u8);
        if (facts.ClockOffsetAfter is { } after)
        {
            Number(after.Ticks);
        }
        else
        {
            Raw("null"u8);
        }

        Raw(",\"losses\":["u8);
        List(facts.Losses.All, loss => $"{{\"antenna\":{loss.First.Antenna.Number},\"at\":{loss.First.At.UtcTicks - _from},\"kind\":\"{SessionLossWords.Of(loss.First.Loss)}\"}}");
        Raw("]"u8);
        Nearby(facts.NearbyKits);
        Raw(",\"passStarts\":["u8);
        List(facts.PassStarts, start => $"{start - _from}");
        Raw("],\"presentation\":\""u8);
        Ascii(facts.Presentation.Digest.ToString());
        Raw("\",\"schema\":\"toolledger/session-evidence/1\",\"slotLength\":"u8);
        Number(facts.Policy.SlotLength.Ticks);
        Changes(facts.SurroundingsChanges);
        Raw(",\"tags\":["u8);
        bool first = true;
        foreach (int index in tags.Order)
        {
            if (facts.Store.TryGetSpan(index, null, out long firstSeen, out long lastSeen))
            {
                Raw(first ? "{"u8 : ",{"u8);
                first = false;
                Tag(facts.Store, index, firstSeen, lastSeen);
            }
        }

        Raw("],\"to\":"u8);
        Number(facts.To.UtcTicks - _from);
        Raw("}"u8);
    }

    // Those of the presentation are covered by its digest, here as below.
    private void Changes(IReadOnlyList<SurroundingsChange> changes)
    {
        if (changes.Count == 0)
        {
            return;
        }

        SurroundingsChange[] sorted = [.. changes.Distinct()];
        Array.Sort(sorted, SurroundingsChange.Compare);
        Raw(",\"surroundingsChanges\":["u8);
        for (int i = 0; i < sorted.Length; i++)
        {
            Raw(i == 0 ? "["u8 : ",["u8);
            Number(sorted[i].At.UtcTicks - _from);
            Raw(","u8);
            Text(sorted[i].By.Value);
            Raw(","u8);
            Text(sorted[i].What);
            Raw("]"u8);
        }

        Raw("]"u8);
    }

    private void Nearby(IReadOnlyList<NearbyKit> kits)
    {
        if (kits.Count == 0)
        {
            return;
        }

        Raw(",\"nearbyKits\":["u8);
        bool first = true;
        foreach (NearbyKit nearby in kits.OrderBy(static nearby => nearby.Kit.Value, StringComparer.Ordinal).ThenBy(static nearby => nearby.From))
        {
            Raw(first ? "["u8 : ",["u8);
            first = false;
            Text(nearby.Kit.Value);
            Raw(","u8);
            Number(nearby.From.UtcTicks - _from);
            if (nearby.Until is { } until)
            {
                Raw(","u8);
                Number(until.UtcTicks - _from);
            }

            Raw("]"u8);
        }

        Raw("]"u8);
    }

    private void Tag(EvidenceStore store, int tag, long firstSeen, long lastSeen)
    {
        ref TagEntry entry = ref store.Tags[tag];
        Raw("\"firstSeen\":"u8);
        Number(firstSeen - _from);
        Raw(",\"lastSeen\":"u8);
        Number(lastSeen - _from);
        Raw(",\"looks\":["u8);
        ReadOnlySpan<ulong> looks = store.LooksOf(tag);
        for (bool first = true; !looks.IsEmpty; first = false)
        {
            Raw(first ? "["u8 : ",["u8);
            Number(LookKey.Pass(looks[0]));
            Raw(","u8);
            Number(LookKey.Antenna(looks[0]));
            int length = LookIndex.CellLength(looks);
            foreach (ulong look in looks[..length])
            {
                Raw(","u8);
                Number(LookKey.Slot(look));
            }

            Raw("]"u8);
            looks = looks[length..];
        }

        Raw("]"u8);
        if (entry.HasStrength)
        {
            Raw(",\"strongest\":"u8);
            Number(entry.Strongest);
        }

        Raw(",\"tag\":"u8);
        Text(store.Tags.TagOf(entry).ToString());
        TidPair tids = store.TidsOf(tag);
        if (!tids.First.IsEmpty)
        {
            Raw(tids.HasMore ? ",\"tids\":[true"u8 : ",\"tids\":[false"u8);
            Tid(tids.First);
            Tid(tids.Second);
            Raw("]"u8);
        }

        if (entry.HasStrength)
        {
            Raw(",\"weakest\":"u8);
            Number(entry.Weakest);
        }

        Raw("}"u8);
    }

    private void Tid(Tid tid)
    {
        if (!tid.IsEmpty)
        {
            Raw(",\""u8);
            Ascii(tid.ToString());
            Raw("\""u8);
        }
    }

    private void List<T>(IEnumerable<T> items, Func<T, FormattableString> text) =>
        Ascii(string.Join(',', items.Select(item => FormattableString.Invariant(text(item)))));

    private void Number(long value)
    {
        Span<byte> digits = stackalloc byte[20];
        Utf8Formatter.TryFormat(value, digits, out int written);
        Raw(digits[..written]);
    }

    private void Ascii(string text)
    {
        Span<byte> one = stackalloc byte[1];
        foreach (char c in text)
        {
            one[0] = (byte)c;
            Raw(one);
        }
    }

    // Ids hold no control characters, so only the quotation mark and the backslash need an escape (RFC 8785, 3.2.2.2).
    private void Text(string text)
    {
        Raw("\""u8);
        Raw(Encoding.UTF8.GetBytes(text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)));
        Raw("\""u8);
    }

    private void Raw(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length > _buffer.Length - _used)
        {
            _hash.AppendData(_buffer, 0, _used);
            _used = 0;
            if (bytes.Length > _buffer.Length)
            {
                _hash.AppendData(bytes);
                return;
            }
        }

        bytes.CopyTo(_buffer.AsSpan(_used));
        _used += bytes.Length;
    }

    private Digest Finish()
    {
        _hash.AppendData(_buffer, 0, _used);
        return Digest.FromHash(_hash.GetHashAndReset());
    }
}
