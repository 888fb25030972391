using System;
using CalibrationDesk;

// Plain when piped: emphasis only on a terminal, and never where NO_COLOR is set.
bool isPlain = Console.IsOutputRedirected || !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
return DeskCommand.Run(args, Console.Out, Console.Error, isPlain);
