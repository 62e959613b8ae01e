using Lighting.Calc.Tests.Charging;
using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>Worked examples of load analysis and endurance from installation manuals, through the lists, the network
/// and the ride.</summary>
public class LoadAnalysis
{
    // Volts are not printed with the amps; all loads are of constant current, so that none depends on them.
    private const string Panel = """
        circuit,lamp,type,quantity,volts,amps,lit when
        panel waiting,panel,fixed,1,24,39 mA,state=waiting
        panel alarm,panel in alarm,fixed,1,24,65 mA,state=alarm
        sounder waiting,sounder base,fixed,4,24,1.2 mA,state=waiting
        sounder alarm,sounder base in alarm,fixed,4,24,5.5 mA,state=alarm
        flasher waiting,sounder flasher base,fixed,2,24,1.2 mA,state=waiting
        flasher alarm,sounder flasher base in alarm,fixed,2,24,7 mA,state=alarm
        detector alarm,detector in alarm,fixed,1,24,12 mA,state=alarm
        call points,call point,fixed,2,24,1 mA,state=waiting|alarm
        optical waiting,optical detector,fixed,5,24,0.1 mA,state=waiting
        optical alarm,optical detector of the other zones,fixed,4,24,0.1 mA,state=alarm

        """;

    // Of less current than a list takes.
    private static readonly FittedLamp s_heatDetector = new()
    {
        Circuit = "heat",
        Lamp = "heat detector",
        Specification = LampSpecification.FromCurrent(
            LampType.Fixed,
            ElectricPotential.FromVolts(24),
            ElectricCurrent.FromAmperes(0.00005)
        ),
    };

    /// <summary>
    /// Instruction manual GLT.MAN-129 issue 1.0 of a fire alarm panel page 23, "Sample
    /// calculation": amps of each kind of device, how many of them, each product and their sum in alarm, 0.11545 A. Of
    /// the sum waiting only the products are known: 0.039 + 0.0048 + 0.0024 + 0.002 + 0.0005 + 0.00005.
    /// </summary>
    [Theory]
    [InlineData(
        "alarm",
        0.11545,
        "panel alarm 0.065; sounder alarm 0.022; flasher alarm 0.014; detector alarm 0.012; call points 0.002; optical "
            + "alarm 0.0004; heat 0.00005"
    )]
    [InlineData(
        "waiting",
        null,
        "panel waiting 0.039; sounder waiting 0.0048; flasher waiting 0.0024; call points 0.002; optical waiting "
            + "0.0005; heat 0.00005"
    )]
    [Against("load of a setting", "fire alarm manual GLT.MAN-129, page 23", CheckKind.Arithmetic)]
    public void Fire_alarm_manual_GLT_MAN_129_page_23_adds_up_its_loads(
        string state,
        double? printedAmperes,
        string printedProducts
    )
    {
        Bike bike = BikeLists
            .Read(ListSource.Empty.With("lamps.csv", Panel).With("bike.csv", "item,value\nsystem voltage,24\n"))
            .Value.Bike;
        bike = bike with { Lamps = bike.Lamps.Add(s_heatDetector) };
        OperatingPoint point = Assert.Single(
            BikeSolution
                .Solve(
                    bike,
                    new CheckOptions { When = Condition.Parse($"state={state}") },
                    TestContext.Current.CancellationToken
                )
                .Points
        );
        foreach (string printed in printedProducts.Split("; "))
        {
            string[] words = printed.Split(' ');
            double amperes = point
                .Lamps.Where(l => l.Lamp.Circuit == string.Join(' ', words[..^1]))
                .Sum(l => l.Current.Amperes);
            Publication.Meets(
                double.Parse(words[^1], System.Globalization.CultureInfo.InvariantCulture),
                amperes,
                1e-9
            );
        }

        if (printedAmperes is { } sum)
            Publication.Meets(sum, point.TotalCurrent.Amperes, 5e-6);
    }

    /// <summary>
    /// Manual of an alarm system (iSecure), page 72, "Standby-battery calculation worksheet": amps of three kits,
    /// 0.006 A more with a network connection, and the hours they stand on a battery of 4 Ah and of 5 Ah, printed as
    /// about. The printed hours are the ampere-hours over the amps, less up to 1.3 h: nowhere more, and 5.5 % less at
    /// most.
    /// </summary>
    [Theory]
    [InlineData(0.146, 4, 27)]
    [InlineData(0.152, 4, 26)]
    [InlineData(0.146, 5, 34)]
    [InlineData(0.152, 5, 32)]
    [InlineData(0.155, 4, 25)]
    [InlineData(0.161, 4, 24)]
    [InlineData(0.155, 5, 32)]
    [InlineData(0.161, 5, 30)]
    [InlineData(0.200, 4, 19.5)]
    [InlineData(0.206, 4, 19)]
    [InlineData(0.200, 5, 24)]
    [InlineData(0.206, 5, 23)]
    [Against("ride balance", "alarm system manual, page 72, hours printed as about", CheckKind.Model)]
    public void Alarm_manual_page_72_hours_on_the_battery(
        double amperes,
        double ampereHours,
        double printedHours
    )
    {
        Bike bike = new Bike { BatteryCapacity = ElectricCharge.FromAmpereHours(ampereHours) }.Riding((0, 40 * 60, ""));
        RideStretchBalance standing = ChargingSystem.WithLoads(bike, ValleyPost.Load(amperes)).Ride().Stretches[0];
        Assert.Equal(StateOfChargeLimit.Flat, standing.Limit);
        Assert.True(standing.LimitAfter!.Value.Hours >= printedHours);
        Publication.MeetsWithin(0.06, printedHours, standing.LimitAfter.Value.Hours);
    }
}
