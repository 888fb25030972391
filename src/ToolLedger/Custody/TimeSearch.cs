using System;
using System.Collections.Generic;

namespace ToolLedger.Custody;

/// <summary>Looks things up by time in lists that are in time order, without going through them.</summary>
internal static class TimeSearch
{
    /// <summary>The index of the last item that is no later than an instant; -1 if there is none.</summary>
    internal static int LastIndex<T>(List<T> items, DateTimeOffset at, Func<T, DateTimeOffset> timeOf)
    {
        int low = 0;
        int high = items.Count;
        while (low < high)
        {
            int middle = (low + high) >>> 1;
            if (timeOf(items[middle]) <= at)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return low - 1;
    }

    /// <summary>The list of a key, made when first asked for.</summary>
    internal static List<T> ListOf<TKey, T>(this Dictionary<TKey, List<T>> lists, TKey key)
        where TKey : notnull
    {
        if (!lists.TryGetValue(key, out List<T>? list))
        {
            lists.Add(key, list = []);
        }

        return list;
    }
}
