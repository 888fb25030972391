#if NET
using System;
using System.Collections.Generic;
using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Linq;
using System.Text;
using Xunit;

namespace ToolLedger.Identifiers.Tests;

/// <summary>
/// Cross-check against an independent implementation: the npm package epc-tds 1.4.1, run in node. It is no dependency: without
/// node or without the package on NODE_PATH the test is skipped and says so.
/// </summary>
public sealed class NodeCrossCheckTests
{
    private const string Script = """
        const tds = require('epc-tds');
        const lines = require('fs').readFileSync(0, 'utf8').split('\n').filter(l => l.length > 0);
        for (const line of lines) {
          const [hex, uri] = line.split('\t');
          let a, b;
          try { a = tds.valueOf(hex).toTagURI(); } catch (e) { a = 'refused'; }
          try { b = tds.fromTagURI(uri).toHexString(); } catch (e) { b = 'refused'; }
          console.log(a + '\t' + b);
        }
        """;

    private static readonly EpcScheme[] Schemes =
    [
        EpcScheme.Sgtin96, EpcScheme.Sgtin198, EpcScheme.Sscc96, EpcScheme.Sgln96, EpcScheme.Sgln195, EpcScheme.Grai96, EpcScheme.Grai170,
        EpcScheme.Giai96, EpcScheme.Giai202, EpcScheme.Gsrn96, EpcScheme.Gdti96, EpcScheme.Gdti174, EpcScheme.Cpi96, EpcScheme.Sgcn96, EpcScheme.Gid96,
    ];

    [Fact]
    public void An_independent_implementation_agrees_but_for_listed_disagreements()
    {
        var draw = new SplitMix(42);
        string[] uris = Enumerable.Range(0, 3_000).Select(i => AnyFields.TagUri(Schemes[i % Schemes.Length], draw)).ToArray();
        string[] hexes = uris.Select(u => EpcFields.ParseTagUri(u.AsSpan()).ToEpc().ToWholeWords().ToString()).ToArray();
        string? output = Run(string.Concat(uris.Select((u, i) => hexes[i] + "\t" + u + "\n")));
        Assert.SkipWhen(output is null, "node, or its package epc-tds 1.4.1 on NODE_PATH, is missing: no cross-check was made.");

        string[][] answers = output!.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split('\t')).ToArray();
        Assert.Equal(uris.Length, answers.Length);
        var unexplained = new List<string>();
        int agreed = 0;
        for (int i = 0; i < uris.Length; i++)
        {
            bool same = string.Equals(answers[i][0], uris[i], StringComparison.Ordinal)
                && string.Equals(answers[i][1].PadRight(hexes[i].Length, '0'), hexes[i], StringComparison.OrdinalIgnoreCase);
            agreed += same ? 1 : 0;
            if (!same && Clause(uris[i]) is null)
            {
                unexplained.Add(uris[i] + " " + hexes[i] + ": " + string.Join(" ", answers[i]));
            }
        }

        Assert.True(unexplained.Count == 0, string.Join("\n", unexplained.Take(20)));
        Assert.True(agreed > 1_500, "only " + agreed.ToString(CultureInfo.InvariantCulture) + " agreed");
    }

    // Where the two differ, and the clause of GS1 TDS 2.3 that decides; null where there is no excuse.
    private static string? Clause(string uri)
    {
        string[] parts = uri.Split(':');
        string[] components = parts[4].Split('.');
        bool text = parts[3] is "sgtin-198" or "sgln-195" or "grai-170" or "giai-202" or "gdti-174";
        return parts[3] switch
        {
            _ when text && (uri.Contains('%', StringComparison.Ordinal) || components.Length > 4) => "s.6.3: seven characters are escaped, dots and colons stand as themselves",
            _ when text && uri.Count(c => c is ':' or '.') > 4 => "s.6.3: dots and colons stand as themselves",
            "sgln-96" or "sgln-195" or "grai-96" or "grai-170" or "gdti-96" or "gdti-174" or "sgcn-96" when components[1].Length == 12 =>
                "s.14.3.3: a component without digits is empty",
            "gsrn-96" when components[2].StartsWith('0') => "s.14.4.3: the service reference keeps its leading zeros",
            "sgcn-96" when components[3].Length > 1 && components[3].StartsWith('0') => "s.14.3.6: leading zeros of the serial number survive",
            _ => null,
        };
    }

    private static string? Run(string input)
    {
        var start = new ProcessStartInfo("node") { UseShellExecute = false, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add("-e");
        start.ArgumentList.Add(Script);
        try
        {
            using Process process = Process.Start(start)!;
            process.ErrorDataReceived += (_, _) => { };
            process.BeginErrorReadLine();
            var output = new StringBuilder();
            process.OutputDataReceived += (_, line) => output.Append(line.Data).Append('\n');
            process.BeginOutputReadLine();
            try
            {
                process.StandardInput.Write(input);
                process.StandardInput.Close();
            }
            catch (System.IO.IOException)
            {
                // The package is missing: node has ended before it read its input.
            }

            process.WaitForExit();
            return process.ExitCode == 0 ? output.ToString() : null;
        }
        catch (Win32Exception)
        {
            return null;
        }
    }
}
#endif
