using System;
using System.Threading;
using ReaderTap;

using var stop = new CancellationTokenSource();
Console.CancelKeyPress += (_, pressed) =>
{
    pressed.Cancel = true;
    stop.Cancel();
};
return await TapCommand.RunAsync(args, Console.Out, Console.Error, TimeProvider.System, stop.Token);
