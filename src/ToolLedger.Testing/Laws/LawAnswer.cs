namespace ToolLedger.Testing.Laws;

/// <summary>What a law says of one case: nothing, that it holds, or what is wrong.</summary>
internal readonly record struct LawAnswer
{
    private LawAnswer(bool applies, string expected, string before, string found)
    {
        Applies = applies;
        Expected = expected;
        Before = before;
        Found = found;
    }

    /// <summary>The case has nothing that the law is about.</summary>
    public static LawAnswer Silent { get; }

    public static LawAnswer Holds { get; } = new(applies: true, "", "", "");

    public bool Applies { get; }

    public string Expected { get; }

    /// <summary>What broke the law, before the case was changed; empty where the law changes nothing.</summary>
    public string Before { get; }

    public string Found { get; }

    public bool IsBroken => Expected is { Length: > 0 };

    public static LawAnswer Broken(string expected, string found) => new(applies: true, expected, "", found);

    /// <summary>Broken at one line, or at the kit: what stood there before the change and what after it.</summary>
    public static LawAnswer Changed(string expected, string before, string after) => new(applies: true, expected, before, after);

    /// <summary>Broken where two texts differ, shown by the first line in which they do.</summary>
    public static LawAnswer Same(string what, string before, string after)
    {
        if (string.Equals(before, after, System.StringComparison.Ordinal))
        {
            return Holds;
        }

        string[] one = before.Split('\n'), other = after.Split('\n');
        int i = 0;
        while (i < one.Length && i < other.Length && string.Equals(one[i], other[i], System.StringComparison.Ordinal))
        {
            i++;
        }

        return Changed(what, i < one.Length ? one[i] : "nothing more", i < other.Length ? other[i] : "nothing more");
    }
}
