namespace Lighting.Calc;

/// <summary>The places of readings that are no points of the harness: the leads of the unplugged generator, and the
/// lead of the battery.</summary>
internal static class BenchPoints
{
    /// <summary>Where an ammeter reads what drains the battery.</summary>
    public const string BatteryLead = "battery lead";

    /// <summary>The frame, to which no lead of a sound generator is joined.</summary>
    public const string Frame = "frame";

    /// <summary>Leads of a generator: two of a single-phase one, three of a three-phase one.</summary>
    public const int MostLeads = 3;

    private const string Generator = "generator ";

    /// <summary>Number of a lead of the generator, from 1; 0 for any other place.</summary>
    public static int LeadOf(string place)
    {
        for (int lead = 1; lead <= MostLeads; lead++)
            if (Name.Equal(place, NameOf(lead)))
                return lead;
        return 0;
    }

    /// <summary>Name of a lead; of 0 the frame.</summary>
    public static string NameOf(int lead) => lead == 0 ? Frame : $"{Generator}{lead}";

    /// <summary>Whether a place goes with a lead of the generator.</summary>
    public static bool IsGenerator(string place) => LeadOf(place) > 0 || Name.Equal(place, Frame);
}
