namespace Lighting.Calc.Tests.Lists;

/// <summary>The invented lists of the Pinmoor Valley Post's twin, and short ways to read variations of them.</summary>
internal static class ListSamples
{
    public const string BikeCsv = """
        item,value
        name,Pinmoor twin
        system voltage,12 V
        battery capacity,9 Ah
        earth,positive

        """;

    public const string LampsCsv = """
        circuit,lamp,code,type,quantity,volts,watts,amps,minimum volts,lit when,duty,feed,return
        headlamp,dip,,halogen,1,13.2,58,,,lights=low,,dip feed,frame
        rear,stop,P21W,,,,,,,brake=on,0.2,stop feed,frame
        dash,instrument,,filament,3,12,,0.18,,lights=low|high,100 %,dash feed,frame
        rear,tail,,led,1,12,1.5 W,,8,lights=low|high,,dash feed,frame

        """;

    public const string RunsCsv = """
        run,from,to,wire,length,joints,joint resistance,bundle,colour
        supply,battery +,main in,14 AWG,30 cm,1,2 mΩ,1,
        to switch,main out,switch in,1.5 mm2,6 ft,2,5 mohm,4,RDBU
        frame wire,frame,battery -,12 AWG stranded,0.4,,,,bk

        """;

    public const string SwitchesCsv = """
        switch,from,to,closed in,resistance
        lights,switch in,dip feed,low,10 mΩ
        lights,switch in,dash feed,low|high,
        brake,switch in,stop feed,on,0.02

        """;

    public const string FusesCsv = """
        fuse,from,to,rating,style,resistance
        main,main in,main out,15 A,glass,

        """;

    public const string ChargingCsv = """
        rpm,current,when
        1000,1.5 A,
        3000,8,
        5000,10.5,

        """;

    public const string RideCsv = """
        stretch,rpm,minutes,when
        to the sorting office,2500,12,lights=low
        doorsteps,1100,0.5 h,lights=low; brake=on

        """;

    public const string SwapsCsv = """
        lamp,new code,type,volts,watts,amps,minimum volts
        stop,,led,12,2.4,,7.5
        instrument,,led resistor,12,,20 mA,9

        """;

    public const string ReadingsCsv = """
        when,point,instrument,reading
        lights=low,dip feed,meter,9.4 V
        lights=low,frame,meter,350 mV
        lights=low,dip feed,test lamp,dim
        ,main,ammeter,6.2 A
        ,frame wire,ohmmeter,open
        ,to switch,ohmmeter,40 mΩ
        brake=on,stop,visual,bright
        lights=high,dash feed,meter,

        """;

    /// <summary>All nine lists.</summary>
    public static ListSource Whole { get; } =
        Of(
            ("bike.csv", BikeCsv),
            ("lamps.csv", LampsCsv),
            ("runs.csv", RunsCsv),
            ("switches.csv", SwitchesCsv),
            ("fuses.csv", FusesCsv),
            ("charging.csv", ChargingCsv),
            ("ride.csv", RideCsv),
            ("swaps.csv", SwapsCsv),
            ("readings.csv", ReadingsCsv)
        );

    public static ListSource Of(params (string Name, string Text)[] lists) =>
        lists.Aggregate(ListSource.Empty, (source, list) => source.With(list.Name, list.Text));

    /// <summary>All nine lists, one of them in another form.</summary>
    public static ListSource WholeBut(string name, string text) =>
        Texts()
            .Aggregate(
                ListSource.Empty,
                (source, list) => source.With(list.Name, list.Name == name ? text : list.Text)
            );

    public static (string Name, string Text)[] Texts() =>
        [
            ("bike.csv", BikeCsv),
            ("lamps.csv", LampsCsv),
            ("runs.csv", RunsCsv),
            ("switches.csv", SwitchesCsv),
            ("fuses.csv", FusesCsv),
            ("charging.csv", ChargingCsv),
            ("ride.csv", RideCsv),
            ("swaps.csv", SwapsCsv),
            ("readings.csv", ReadingsCsv),
        ];

    /// <summary>The bike of a lone <c>lamps.csv</c> with these rows.</summary>
    public static Bike LampsOnly(string text) => BikeLists.Read(Of(("lamps.csv", text))).Value.Bike;

    /// <summary>The messages of the faults.</summary>
    public static string[] Faults(ListSource source) => [.. BikeLists.Read(source).Faults.Select(f => f.Message)];

    /// <summary>The messages of the cautions.</summary>
    public static string[] Cautions(ListSource source) => [.. BikeLists.Read(source).Cautions.Select(f => f.Message)];
}
