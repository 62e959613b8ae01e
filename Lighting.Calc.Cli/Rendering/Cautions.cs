using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The cautions of every command as blocks; <see cref="CautionTexts"/> words them.</summary>
internal static class Cautions
{
    /// <summary>For repairs and fitting, of a bike that is not known.</summary>
    public static CautionList OfAnyBike { get; } = new(CautionTexts.OfAnyBike);

    /// <summary>For repairs and fitting.</summary>
    public static CautionList OfWork(Bike bike) => new(CautionTexts.OfWork(bike));

    /// <summary>For ohm measurements.</summary>
    public static CautionList OfOhms(Bike bike) => new(CautionTexts.OfOhms(bike));

    /// <summary>For repairs, and for measurements with the engine running.</summary>
    public static CautionList OfEngine(Bike bike) => new(CautionTexts.OfEngine(bike));

    /// <summary>For the live part of a sheet of readings.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="isRunning">Whether its engine runs.</param>
    /// <param name="highest">The highest current that an ammeter may be expected to show; null where none is
    /// used.</param>
    public static CautionList OfReadings(Bike bike, bool isRunning, ElectricCurrent? highest) =>
        new(CautionTexts.OfReadings(bike, isRunning, highest));

    /// <summary>For one test with an instrument.</summary>
    public static CautionList OfTest(FaultFinder finder, NextTest test) =>
        new(
            CautionTexts.OfTest(
                finder.Bike,
                test.Instrument,
                isRunning: finder.EngineSpeed is not null,
                hasJumper: test.Jumper is not null,
                isLampOut: test.TakesLampOut
            )
        );

    /// <summary>For the jumper tests of a sheet.</summary>
    public static CautionList OfJumpers { get; } = new(CautionTexts.OfJumpers);

    /// <summary>What an ammeter's reading needs beside it: nothing, or that most meters do not reach it.</summary>
    public static string RangeOf(ElectricCurrent highest) => CautionTexts.RangeOf(highest);
}
