using System.IO;
// <example>
using ToolLedger.Identifiers;
using ToolLedger.Identifiers.Schemes;
// </example>

namespace ToolLedger.Samples.Tests.Documents.Examples;

/// <summary>The example of docs/identifiers.md: from bits to a typed value and back.</summary>
internal static class OneTag
{
    public static void Run(TextWriter Console, RepositoryFiles File)
    {
        _ = File;
        // <example>
        Epc epc = Epc.Parse("3414257BF40000000000162E");
        Console.WriteLine(epc.ToTagUri()); // the raw URI where the bits cannot be decoded: never an exception
        if (epc.TryGetKey(out Giai asset)) // one way from bits to every typed value
        {
            Console.WriteLine(asset.Identity.ToUri());
            if (asset.Identity.TryEncode(EpcScheme.Giai202, 0, out Epc longer, out EpcFault fault)) // and back
            {
                Console.WriteLine($"{longer.BitCount} bits: {longer}");
            }
            else
            {
                Console.WriteLine(fault);
            }
        }
        // </example>
    }
}
