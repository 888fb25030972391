using System;
using System.Buffers.Binary;
using System.Diagnostics;
using System.IO;
using System.Runtime.Intrinsics;
using System.Threading;
using System.Threading.Tasks;
using ToolLedger.Presence;
using ToolLedger.Records;
using ToolLedger.Statistics;
using Xunit;

namespace ToolLedger.Tests.Statistics;

/// <summary>The same bits on every machine: a digest over thousands of results that stands in the test, also with every processor extension switched off.</summary>
public sealed class SameBitsTests
{
    private const string Expected = "sha256:ba61eb7149f875060f6b93bb8fbd48bafad52488892fdfdaa55ada03ad22e0eb";
    private static readonly StatedRiskPolicy Policy = new();

    private const string IntrinsicsSwitch = "DOTNET_EnableHWIntrinsic";
    private const string TiersSwitch = "DOTNET_TieredCompilation";

    [Fact]
    public void The_digest_of_all_functions_is_the_one_written_here()
    {
        bool isPlain = Environment.GetEnvironmentVariable(IntrinsicsSwitch) == "0";
        Assert.False(isPlain && Vector128.IsHardwareAccelerated, "The switch did not reach the process.");

        string digest = DigestOfResults().ToString();
        Assert.True(digest == Expected, "The digest is " + digest);
    }

    [Fact]
    public async Task A_process_without_processor_extensions_gets_the_same_digest()
    {
        Assert.SkipWhen(Environment.GetEnvironmentVariable(IntrinsicsSwitch) is not null, "This is that process.");
        string host = Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "ToolLedger.Tests.exe" : "ToolLedger.Tests");
        string method = $"{typeof(SameBitsTests).FullName}.{nameof(The_digest_of_all_functions_is_the_one_written_here)}";
        var start = new ProcessStartInfo(host, ["-method", method]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment[IntrinsicsSwitch] = "0";
        start.Environment[TiersSwitch] = "0";
        using Process process = Process.Start(start)!;
        CancellationToken stop = TestContext.Current.CancellationToken;
        Task<string> output = process.StandardOutput.ReadToEndAsync(stop);
        Task<string> error = process.StandardError.ReadToEndAsync(stop);
        await process.WaitForExitAsync(stop);

        Assert.True(process.ExitCode == 0, await output + await error);
        Assert.Contains("Total: 1, Errors: 0, Failed: 0, Skipped: 0", await output, StringComparison.Ordinal);
    }

    private static Digest DigestOfResults()
    {
        const int Steps = 2000;
        const int Functions = 19;
        byte[] bytes = new byte[Steps * Functions * sizeof(double)];
        Span<byte> rest = bytes;
        for (int step = 0; step < Steps; step++)
        {
            double share = (step + 0.5) / Steps;
            double x = (share * 60) - 30;
            double a = 0.01 + (share * share * 300);
            double b = 0.5 + (step % 37);
            foreach (double value in (ReadOnlySpan<double>)
                [
                    Elementary.Exp(x * 20), Elementary.ExpMinus1(x / 30), Elementary.Log(a), Elementary.LogOnePlus(x / 31), Elementary.Pow(a, x),
                    ErrorFunction.Erf(x / 5), ErrorFunction.Complement(x), NormalDistribution.AtMost(x), NormalDistribution.Quantile(share),
                    GammaFunction.LogGamma(a), BetaFunction.LogBeta(a, b), GammaFunction.Lower(a, b), BetaFunction.Lower(share, a, b), BetaFunction.Quantile(share, a, b),
                    BinomialDistribution.LowerLimit(step % 51, 50, 0.95),
                    BetaBinomial.LogExactly(step % 50, 49, a, b), DetectionModel.Example.Posterior([new PassLooks(40, step % 41), new PassLooks(30, 0)], share, isBounded: true),
                    Policy.Decide([new PassLooks(40, step % 41), new PassLooks(25, step % 3)], 1 + (step % 60)).Cut,
                    Quadrature.Integrate(t => Elementary.Exp(-t * t * a), 0, b, 1e-12),
                ])
            {
                BinaryPrimitives.WriteDoubleLittleEndian(rest, value);
                rest = rest[sizeof(double)..];
            }
        }

        return Digest.Of(bytes);
    }
}
