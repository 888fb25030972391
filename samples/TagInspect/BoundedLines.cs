using System.Collections.Generic;
using System.IO;
using System.Text;

namespace TagInspect;

/// <summary>Reads lines of any length without keeping more than a stated number of characters.</summary>
internal static class BoundedLines
{
    internal const int MaximumLength = 1 << 20;

    /// <summary>The lines; <see langword="null"/> stands for one that is too long.</summary>
    internal static IEnumerable<string?> Read(TextReader input)
    {
        var line = new StringBuilder();
        var block = new char[8192];
        bool any = false;
        bool tooLong = false;
        int count;
        while ((count = input.Read(block, 0, block.Length)) > 0)
        {
            for (int i = 0; i < count; i++)
            {
                any = true;
                if (block[i] == '\n')
                {
                    yield return tooLong ? null : line.ToString().TrimEnd('\r');
                    line.Clear();
                    tooLong = false;
                    any = false;
                }
                else if (line.Length == MaximumLength)
                {
                    tooLong = true;
                }
                else
                {
                    line.Append(block[i]);
                }
            }
        }

        if (any)
        {
            yield return tooLong ? null : line.ToString().TrimEnd('\r');
        }
    }
}
