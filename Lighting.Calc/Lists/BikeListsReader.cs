using Lighting.Calc.Harness;

namespace Lighting.Calc.Lists;

/// <summary>Reads all lists of a bike, in their order, and checks them against each other.</summary>
internal sealed class BikeListsReader(ListSource source, FaultLog log)
{
    public ListResult<BikeLists> Read()
    {
        var tables = ListTables.Open(source, log);
        bool hasRuns = tables.Find(ListSchema.Runs) is { Rows.IsEmpty: false };
        Bike bike = BikeReader.Read(tables.Find(ListSchema.Bike));
        bike = bike with
        {
            Lamps = tables.Find(ListSchema.Lamps) is { } lamps ? LampsReader.Read(lamps, bike.SystemVoltage, hasRuns) : [],
            Runs = tables.Find(ListSchema.Runs) is { } runs ? RunsReader.Read(runs) : [],
            Switches = tables.Find(ListSchema.Switches) is { } switches ? SwitchesReader.Read(switches) : [],
            Fuses = tables.Find(ListSchema.Fuses) is { } fuses ? FusesReader.Read(fuses, hasRuns) : [],
        };
        return log.Result(new BikeLists { Bike = bike });
    }
}
