using System;
using System.Diagnostics.CodeAnalysis;

namespace ToolLedger.Interchange.Llrp;

/// <summary>The parameters of a tag report, for a <c>foreach</c>. They end before the first that cannot be read.</summary>
/// <remarks>It refers to the bytes of its message. Not thread-safe.</remarks>
public ref struct LlrpParameters
{
    private readonly ReadOnlySpan<byte> _bytes;
    private LlrpParameterReader _reader;

    internal LlrpParameters(ReadOnlySpan<byte> report)
    {
        _bytes = report;
        _reader = new LlrpParameterReader(report, Math.Min(report.Length, 4));
    }

    /// <summary>The parameter that <see cref="MoveNext"/> came to; before that the default value.</summary>
    public LlrpParameter Current { get; private set; }

    /// <summary>Goes to the next parameter.</summary>
    /// <returns>False behind the last one.</returns>
    public bool MoveNext()
    {
        if (!_reader.TryRead())
        {
            return false;
        }

        Current = new LlrpParameter(_reader.Type, _reader.IsFixed, _bytes[_reader.ValueStart.._reader.End]);
        return true;
    }

    /// <summary>The parameters from here on.</summary>
    /// <returns>A copy, which goes its own way.</returns>
    [SuppressMessage("Design", "CA1024:Use properties where appropriate", Justification = "foreach asks for a method of this name.")]
    public readonly LlrpParameters GetEnumerator() => this;
}
