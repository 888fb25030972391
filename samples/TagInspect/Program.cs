using System;

namespace TagInspect;

/// <summary>The process around the command.</summary>
internal static class Program
{
    private static int Main(string[] arguments) =>
        InspectCommand.Run(arguments, Console.OpenStandardInput(), Console.OpenStandardOutput(), Console.Error);
}
