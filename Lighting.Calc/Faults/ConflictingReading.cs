namespace Lighting.Calc;

/// <summary>A reading that conflicts with a fault.</summary>
public sealed class ConflictingReading
{
    internal ConflictingReading(Reading reading, string message) => (Reading, Message) = (reading, message);

    /// <summary>The reading.</summary>
    public Reading Reading { get; }

    /// <summary>What was read and what this fault gives, such as <c>read 12.4 V at tail feed; this gives 9.4
    /// V</c>.</summary>
    public string Message { get; }
}
