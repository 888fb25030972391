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
    private const string Expected = "sha256:f17ac31aaee57ad0ecc1bfb3c7b4313b17145806ef9fcbabc1afb9edeea6ebec";
    private static readonly decimal[] Learned = [0.210153836m, 1.518519483m, 1.458571302m, 0.167293245m, 0.485946109m, 14.696164157m];
    private static readonly decimal[] LearnedOfClass = [0.208210437m, 1.526993813m, 1.467323640m, 0.141165405m, 0.544233358m, 12.796816770m];
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
    public void Repeated_runs_on_several_threads_get_the_same_digest()
    {
        Digest[] digests = new Digest[4];
        Parallel.For(0, digests.Length, new ParallelOptions { MaxDegreeOfParallelism = 2 }, run => digests[run] = DigestOfResults());

        Assert.All(digests, static digest => Assert.Equal(Expected, digest.ToString()));
    }

    // What is learned goes into policies and their digests: all its digits, from sessions added in any order.
    [Fact]
    public void What_is_learned_has_the_digits_written_here()
    {
        var learner = new DetectionLearner();
        for (int session = 0; session < 400; session++)
        {
            learner.AddThere([new PassLooks(20, session * 7 % 21), new PassLooks(35, session % 9 == 0 ? 0 : session * 11 % 36)]);
            learner.AddAbsent([new PassLooks(20, session % 11 == 0 ? session % 4 : 0), new PassLooks(35, session % 22 == 0 ? 1 : 0)]);
        }

        Assert.Equal(Learned, Digits(learner.Learn().Model!));
        Assert.Equal(LearnedOfClass, Digits(learner.Learn(DetectionModel.Example).Model!));
    }

    [Fact]
    public async Task A_process_without_processor_extensions_gets_the_same_digest()
    {
        Assert.SkipWhen(Environment.GetEnvironmentVariable(IntrinsicsSwitch) is not null, "This is that process.");
        string host = Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "ToolLedger.Tests.exe" : "ToolLedger.Tests");
        string name = typeof(SameBitsTests).FullName!;
        string[] methods = ["-method", $"{name}.{nameof(The_digest_of_all_functions_is_the_one_written_here)}", "-method", $"{name}.{nameof(What_is_learned_has_the_digits_written_here)}"];
        var start = new ProcessStartInfo(host, methods) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment[IntrinsicsSwitch] = "0";
        start.Environment[TiersSwitch] = "0";
        using Process process = Process.Start(start)!;
        CancellationToken stop = TestContext.Current.CancellationToken;
        Task<string> output = process.StandardOutput.ReadToEndAsync(stop);
        Task<string> error = process.StandardError.ReadToEndAsync(stop);
        await process.WaitForExitAsync(stop);

        Assert.True(process.ExitCode == 0, await output + await error);
        Assert.Contains("Total: 2, Errors: 0, Failed: 0, Skipped: 0", await output, StringComparison.Ordinal);
    }

    private static decimal[] Digits(DetectionModel model) => [model.ObscuredShare, model.Present.A, model.Present.B, model.StrayShare, model.Stray.A, model.Stray.B];

    private static Digest DigestOfResults()
    {
        const int Steps = 2000;
        const int Functions = 27;
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
                    BinomialDistribution.Exactly(step % 400, 400, share), BinomialDistribution.UpperLimit(step % 51, 50, 0.99), GammaFunction.Upper(a, b), NormalDistribution.Density(x / 5),
                    NormalDistribution.Between(x / 6, x), Deviance.Of(a, b), PoissonBinomial.Any([share, share / 3, 1e-9]), RunLength.Mean(share, 1 + (step % 12), 1 + (step % 40)),
                ])
            {
                BinaryPrimitives.WriteDoubleLittleEndian(rest, value);
                rest = rest[sizeof(double)..];
            }
        }

        return Digest.Of(bytes);
    }
}
