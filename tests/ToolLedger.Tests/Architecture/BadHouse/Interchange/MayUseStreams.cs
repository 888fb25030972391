using System.IO;
using System.Threading.Tasks;

namespace ToolLedger.Tests.Architecture.BadHouse.Interchange;

/// <summary>The one room in which a stream is right; a file is not.</summary>
internal static class MayUseStreams
{
    public static async Task<int> LengthAsync(Stream stream)
    {
        await Task.Yield();
        return (int)stream.Length;
    }
}
