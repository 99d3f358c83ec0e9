using Failwise.Cli;

return Commands.Run(args);
