using UnitsNet;

namespace Lighting.Calc;

/// <summary>A resistor beside an LED lamp that draws what the filament lamp drew, so that a flasher of fixed load keeps
/// its rate.</summary>
/// <remarks>
/// R = V²/(Plamp − Pled), V the voltage at which both powers hold; its heat is V²/R. Sources: Joule's law; the fitting
/// instructions of motorcycle indicators print the same rule (10030302, page 21). Valid where the LED draws
/// less than the lamp.
/// </remarks>
internal sealed record LoadResistor
{
    // IEC 60063, series E24; from memory.
    private static readonly double[] s_preferred =
    [
        1.0,
        1.1,
        1.2,
        1.3,
        1.5,
        1.6,
        1.8,
        2.0,
        2.2,
        2.4,
        2.7,
        3.0,
        3.3,
        3.6,
        3.9,
        4.3,
        4.7,
        5.1,
        5.6,
        6.2,
        6.8,
        7.5,
        8.2,
        9.1,
    ];

    // Ratings of wire-wound resistors: common practice, no source.
    private static readonly double[] s_ratedWatts = [5, 10, 25, 50, 100, 200];

    private LoadResistor(ElectricPotential voltage, ElectricResistance resistance)
    {
        Voltage = voltage;
        Resistance = resistance;
    }

    /// <summary>The voltage at which it makes up for the difference.</summary>
    public ElectricPotential Voltage { get; }

    /// <summary>Its exact resistance, above zero; see <see cref="PreferredResistance"/> for one to buy.</summary>
    public ElectricResistance Resistance { get; }

    /// <summary>Its heat at <see cref="Voltage"/>, while lit: the watts that the LED saves.</summary>
    public Power Heat => HeatAt(Voltage);

    /// <summary>The nearest value of series E24 that is not above <see cref="Resistance"/>, so that the load is not
    /// below the lamp's.</summary>
    public ElectricResistance PreferredResistance
    {
        get
        {
            double decade = Math.Pow(10, Math.Floor(Math.Log10(Resistance.Ohms * (1 + 1e-9))));
            double step = s_preferred.Last(v => v * decade <= Resistance.Ohms * (1 + 1e-9));
            return ElectricResistance.FromOhms(step * decade);
        }
    }

    /// <summary>The resistor that makes up for an LED.</summary>
    /// <param name="voltage">Voltage at which both powers hold, above zero.</param>
    /// <param name="lamp">Watts of the filament lamp, above zero.</param>
    /// <param name="led">Watts of the LED, zero or more and below the lamp's.</param>
    public static LoadResistor Between(ElectricPotential voltage, Power lamp, Power led)
    {
        if (!(voltage.Volts > 0))
            throw new ArgumentOutOfRangeException(nameof(voltage), voltage, "Voltage must be greater than zero.");
        double watts = (double)lamp.Watts - (double)led.Watts;
        if (!((double)led.Watts >= 0 && watts > 0))
            throw new ArgumentOutOfRangeException(
                nameof(led),
                led,
                "LED power must be zero or more and less than the lamp's."
            );
        return new LoadResistor(voltage, ElectricResistance.FromOhms(voltage.Volts * voltage.Volts / watts));
    }

    /// <summary>Its heat while lit at another voltage.</summary>
    public Power HeatAt(ElectricPotential voltage) => Power.FromWatts(voltage.Volts * voltage.Volts / Resistance.Ohms);

    /// <summary>The usual rating that leaves it twice its heat while lit, on a heat sink; null where no usual resistor
    /// does.</summary>
    /// <remarks>The margin is common practice, no source: a flasher that sticks leaves it lit.</remarks>
    public Power? RatingFor(ElectricPotential highest)
    {
        double needed = SwapConstants.ResistorMargin * (double)HeatAt(highest).Watts;
        double rated = s_ratedWatts.FirstOrDefault(w => w >= needed);
        return rated > 0 ? Power.FromWatts(rated) : null;
    }
}
