using Failwise.Cli;

// One diagnosis allocates less than this: no collection while it runs. A longer run falls back to collecting by itself.
GC.TryStartNoGCRegion(64 << 20);
return Commands.Run(args);
