#if !NET
// mono 6.8 sometimes aborts while it shuts down worker threads after the last test: give it none.
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None, MaxThreads = 1)]
#endif
