using System;
using System.Collections.Generic;
using ToolLedger.Records;

namespace ShiftCloseout;

/// <summary>The shape of every TryParse of a stored record.</summary>
internal delegate bool RecordParser<T>(ReadOnlySpan<byte> utf8Json, out T? value, out IReadOnlyList<RecordIssue> issues)
    where T : class;
