namespace Lighting.Calc;

/// <summary>One thing found about a bike, in plain words.</summary>
/// <param name="Severity">How much it weighs.</param>
/// <param name="Subject">The lamp, run, fuse, switch or list it is about.</param>
/// <param name="Message">What was found, with its numbers.</param>
public sealed record Finding(Severity Severity, string Subject, string Message);
