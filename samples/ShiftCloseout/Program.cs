using System;
using System.Threading;
using ShiftCloseout;

// Ctrl-C stops a long read; nothing half-written is left behind.
using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, pressed) =>
{
    pressed.Cancel = true;
    stop.Cancel();
};
return await CloseoutCommand.RunAsync(args, HostConsole.OfProcess(), stop.Token);
