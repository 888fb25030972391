using System;
using System.IO;
using System.Text;

namespace ToolLedger.Samples.Tests.ShiftCloseout;

/// <summary>A stream of text that takes nothing, as one on a full disk.</summary>
internal sealed class FullWriter : TextWriter
{
    public override Encoding Encoding => Encoding.UTF8;

    public override void Write(char value) => throw new IOException("full");

    public override void Write(ReadOnlySpan<char> buffer) => throw new IOException("full");
}
