using System;
using SharpFuzz;

namespace ToolLedger.Tests.Interchange.Fuzz;

/// <summary>
/// The target of a fuzzer that is guided by coverage. The test suite runs the same checks on damaged files, without one.
/// </summary>
internal static class FuzzTarget
{
    // With files as arguments, runs them once: that is how a finding is looked at.
    private static void Main(string[] files)
    {
        foreach (string file in files)
        {
            AnyFile.Check(System.IO.File.ReadAllBytes(file));
            Console.WriteLine(file + ": no fault");
        }

        if (files.Length == 0)
        {
            Fuzzer.OutOfProcess.Run(static stream =>
            {
                var input = new byte[4096];
                int length = 0;
                int read;
                while (length < input.Length && (read = stream.Read(input, length, input.Length - length)) > 0)
                {
                    length += read;
                }

                AnyFile.Check(input.AsSpan(0, length));
            });
        }
    }
}
