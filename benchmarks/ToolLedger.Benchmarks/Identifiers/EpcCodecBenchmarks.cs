using System.Linq;
using System.Text;
using BenchmarkDotNet.Attributes;
using ToolLedger.Identifiers;

namespace ToolLedger.Benchmarks.Identifiers;

/// <summary>The mixed corpus, a thousand EPCs an operation; <see cref="NaiveBitString"/> is the baseline.</summary>
[MemoryDiagnoser]
[System.Diagnostics.CodeAnalysis.SuppressMessage("Maintainability", "CA1515", Justification = "BenchmarkDotNet wants public classes.")]
public class EpcCodecBenchmarks
{
    private const int Count = 1_000;
    private readonly string[] _hexText;
    private readonly byte[][] _hex;
    private readonly byte[][] _uris;
    private readonly byte[] _room = new byte[1024];

    public EpcCodecBenchmarks()
    {
        var corpus = new EpcCorpus(Count);
        _hexText = corpus.Hex;
        _hex = corpus.Hex.Select(Encoding.ASCII.GetBytes).ToArray();
        _uris = corpus.TagUri.Select(Encoding.ASCII.GetBytes).ToArray();
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = Count)]
    public int NaiveHexToTagUri() => _hexText.Sum(hex => NaiveBitString.TagUri(hex).Length);

    [Benchmark(OperationsPerInvoke = Count)]
    public int HexToTagUri()
    {
        int sum = 0;
        foreach (byte[] hex in _hex)
        {
            EpcFields.TryConvertHexToTagUri(hex, _room, out int written);
            sum += written;
        }

        return sum;
    }

    [Benchmark(OperationsPerInvoke = Count)]
    public int HexToFields()
    {
        int sum = 0;
        foreach (byte[] hex in _hex)
        {
            sum += EpcFields.TryDecodeHex(hex, out EpcFields fields) ? fields.Filter : 0;
        }

        return sum;
    }

    [Benchmark(OperationsPerInvoke = Count)]
    public int TagUriToHex()
    {
        int sum = 0;
        foreach (byte[] uri in _uris)
        {
            EpcFields.TryConvertTagUriToHex(uri, _room, out int written);
            sum += written;
        }

        return sum;
    }
}
