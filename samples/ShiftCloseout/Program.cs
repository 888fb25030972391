using System;
using ShiftCloseout;

using var stop = new StopSignal();
Console.CancelKeyPress += (_, pressed) => pressed.Cancel = stop.Press();
return await CloseoutCommand.RunAsync(args, HostConsole.OfProcess(), stop.Token);
