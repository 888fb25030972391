namespace ToolLedger.Identifiers.Schemes;

/// <summary>Element strings out.</summary>
internal static class ElementString
{
    internal static bool TryWrite(in IdentityBits bits, ElementStringForm form, ref TextSink sink)
    {
        Gs1Key? key = KindList.Has(bits.Kind) ? KindList.Of(bits.Kind).Gs1 : null;
        if (key is null)
        {
            return false;
        }

        WriteAi(key.Ai, form, ref sink);
        int start = sink.Length;
        Gs1Text.WriteKey(key, bits, ref sink);
        if (form == ElementStringForm.Bracketed)
        {
            Protect(start, ref sink);
        }

        if (!Gs1Text.HasQualifier(key, bits))
        {
            return true;
        }

        if (form == ElementStringForm.Raw && Ai.PredefinedLength(Ai.FirstTwo(key.Ai)) == 0)
        {
            sink.Add(0x1D);
        }

        WriteAi(key.QualifierAi, form, ref sink);
        start = sink.Length;
        sink.AddPlain(bits.C);
        if (form == ElementStringForm.Bracketed)
        {
            Protect(start, ref sink);
        }

        return true;
    }

    private static void WriteAi(int ai, ElementStringForm form, ref TextSink sink)
    {
        if (form == ElementStringForm.Raw)
        {
            Ai.Write(ai, ref sink);
            return;
        }

        sink.Add((byte)'(');
        Ai.Write(ai, ref sink);
        sink.Add((byte)')');
    }

    // A bracket in a value that would read as an application identifier gets a backslash in front.
    private static void Protect(int start, ref TextSink sink)
    {
        for (int i = start; i < sink.Length; i++)
        {
            if (ElementReader.IsIdentifierAt(sink.From(start), i - start))
            {
                sink.Insert(i, (byte)'\\');
                i++;
            }
        }
    }
}
