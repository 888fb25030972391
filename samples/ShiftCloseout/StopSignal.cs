using System;
using System.Threading;

namespace ShiftCloseout;

/// <summary>Ctrl-C: the first asks the run to stop, so that nothing half-written is left; the second ends the process at once.</summary>
internal sealed class StopSignal : IDisposable
{
    private readonly CancellationTokenSource _stop = new();

    public CancellationToken Token => _stop.Token;

    /// <summary>To be called at each Ctrl-C.</summary>
    /// <returns>Whether the process goes on; false from the second time.</returns>
    public bool Press()
    {
        bool goesOn = !_stop.IsCancellationRequested;
        _stop.Cancel();
        return goesOn;
    }

    public void Dispose() => _stop.Dispose();
}
