using Lighting.Calc.Cli;

return await new Application(Console.Out, Console.Error, isTerminal: !Console.IsOutputRedirected, showsProgress: !Console.IsErrorRedirected).RunAsync(args);
