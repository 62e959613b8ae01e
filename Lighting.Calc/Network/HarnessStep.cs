namespace Lighting.Calc.Network;

/// <summary>One step of a way through the harness.</summary>
/// <param name="Link">The part.</param>
/// <param name="Forward">Whether it is walked from its <c>from</c> to its <c>to</c>.</param>
internal sealed record HarnessStep(HarnessLink Link, bool Forward)
{
    public string Start => Forward ? Link.From : Link.To;

    public string End => Forward ? Link.To : Link.From;
}
