using System.Globalization;
using FsCheck;
using FsCheck.Xunit;
using UnitsNet;

namespace Lighting.Calc.Tests.Lists;

public class QuantityTextTests
{
    [Theory]
    [InlineData("1.8", 1.8)]
    [InlineData("1.8m", 1.8)]
    [InlineData(" 1.8\u00a0m ", 1.8)]
    [InlineData("180 cm", 1.8)]
    [InlineData("1800mm", 1.8)]
    [InlineData("6 ft", 1.8288)]
    [InlineData("6'", 1.8288)]
    [InlineData("10 in", 0.254)]
    [InlineData("+.5 m", 0.5)]
    [InlineData("2e-1", 0.2)]
    public void Lengths(string text, double metres) => Assert.Equal(metres, QuantityText.Length.Parse(text).Meters, 12);

    [Theory]
    [InlineData("20 mΩ", 0.02)]
    [InlineData("20mohm", 0.02)]
    [InlineData("20 m\u2126", 0.02)]
    [InlineData("3 ohm", 3)]
    [InlineData("4.7 kΩ", 4700)]
    [InlineData("10 Mohm", 1e7)]
    public void Resistances(string text, double ohms) =>
        Assert.Equal(ohms, QuantityText.Resistance.Parse(text).Ohms, 12);

    [Fact]
    public void Other_kinds_in_their_words()
    {
        Assert.Equal(0.35, QuantityText.Voltage.Parse("350 mV").Volts);
        Assert.Equal(12, QuantityText.Voltage.Parse("12V").Volts);
        Assert.Equal(8, QuantityText.Current.Parse("8A").Amperes);
        Assert.Equal(0.02, QuantityText.Current.Parse("20 mA").Amperes);
        Assert.Equal(55, (double)QuantityText.Power.Parse("55 W").Watts);
        Assert.Equal(9.5, QuantityText.Charge.Parse("9500 mAh").AmpereHours);
        Assert.Equal(100, QuantityText.Temperature.Parse("212 °F").DegreesCelsius, 9);
        Assert.Equal(20, QuantityText.Temperature.Parse("293.15 K").DegreesCelsius, 9);
        Assert.Equal(-40, QuantityText.Temperature.Parse("-40C").DegreesCelsius);
        Assert.Equal(0.25, QuantityText.Fraction.Parse("25 %").DecimalFractions);
        Assert.Equal(0.25, QuantityText.Fraction.Parse("0.25").DecimalFractions);
        Assert.Equal(3, QuantityText.Percent.Parse("3").Percent);
        Assert.Equal(2500, QuantityText.Speed.Parse("2500 rpm").RevolutionsPerMinute);
        Assert.Equal(30, QuantityText.Duration.Parse("0.5 h").Minutes);
        Assert.Equal(1.5, QuantityText.Duration.Parse("90 s").Minutes);
    }

    [Theory]
    [InlineData("12 MV", "'12 MV' has an unknown unit; expected V, mV or kV")]
    [InlineData("12,5V", "'12,5V' is not a number of volts; write a decimal point: 12.5V")]
    [InlineData("12.", "'12.' is not a number of volts; expected a number such as 1 V")]
    [InlineData("--3", "'--3' is not a number of volts; expected a number such as 1 V")]
    [InlineData("", "'' is not a number of volts; expected a number such as 1 V")]
    [InlineData("1e", "'1e' has an unknown unit; expected V, mV or kV")]
    [InlineData("٣ V", "'٣ V' is not a number of volts; expected a number such as 1 V")]
    [InlineData("1e-12", "'1e-12' is out of range; expected -1000 V to 1000 V")]
    [InlineData("2 kV", "'2 kV' is out of range; expected -1000 V to 1000 V")]
    public void A_text_that_is_no_quantity_says_why(string text, string message)
    {
        Assert.False(QuantityText.Voltage.TryParse(text, out ElectricPotential none, out TextProblem? problem));
        Assert.Equal(message, problem.ToString());
        Assert.Equal(0, none.Volts);
        Assert.Equal(message, Assert.Throws<FormatException>(() => QuantityText.Voltage.Parse(text)).Message);
    }

    [Fact]
    public void A_range_holds_its_ends_and_no_more()
    {
        QuantityText<ElectricCurrent> reader = QuantityText.Current.Within(0.01, 500);
        Assert.Equal(0.01, reader.Parse("0.01").Amperes);
        Assert.Equal(500, reader.Parse("500 A").Amperes);
        Assert.Equal(
            "'0' is out of range; expected 0.01 A to 500 A",
            Assert.Throws<FormatException>(() => reader.Parse("0")).Message
        );
        Assert.False(reader.TryParse("500.0001", out _, out _));
        Assert.Equal(0, reader.OrZero().Parse("0").Amperes);
        Assert.False(reader.OrZero().TryParse("0.005", out _, out _));
    }

    [Property]
    public bool A_quantity_written_reads_back_the_same(NormalFloat number)
    {
        double volts = Math.IEEERemainder(number.Get, 1000);
        ElectricPotential voltage = ElectricPotential.FromVolts(Math.Abs(volts) < 1e-9 ? 0 : volts);
        return QuantityText.Voltage.Parse(QuantityText.Voltage.Write(voltage)).Volts == voltage.Volts;
    }

    [Fact]
    public void The_cultures_of_the_machine_do_not_matter()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        comma.NumberFormat.NumberGroupSeparator = ".";
        try
        {
            CultureInfo.CurrentCulture = comma;
            Assert.Equal(1.5, QuantityText.Voltage.Parse("1.5").Volts);
            Assert.Equal("1.5", QuantityText.Voltage.Write(ElectricPotential.FromVolts(1.5)));
            Assert.Equal(
                "'0' is out of range; expected 0.5 V to 100 V",
                Assert.Throws<FormatException>(() => CellRanges.LampVolts.Parse("0")).Message
            );
            SameLists.Assert(BikeLists.Read(ListSamples.Whole).Value, BikeLists.Read(ListSamples.Whole).Value);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData("18AWG", "18 AWG")]
    [InlineData("16 awg stranded", "16 AWG stranded")]
    [InlineData("1.5 mm²", "1.5 mm2")]
    [InlineData("AWG 18", "18 AWG")]
    [InlineData("awg18 stranded", "18 AWG stranded")]
    [InlineData("18 gauge", "18 AWG")]
    [InlineData("18 ga. ", null)]
    [InlineData("1.0 mm2", "1 mm2")]
    [InlineData("1.50 mm^2", "1.5 mm2")]
    [InlineData("2 sq mm", "2 mm2")]
    [InlineData("14/0.30", "14/0.30")]
    [InlineData("14 / .3", "14/0.30")]
    [InlineData("28x0.3mm", "28/0.30")]
    [InlineData("44/0.30", "44/0.30")]
    [InlineData("65/0.30 mm", "65/0.30")]
    [InlineData("14/.012", "14/.012")]
    [InlineData("28/0.012 in", "28/.012")]
    [InlineData("14/.0115", "14/.0115")]
    [InlineData("7/0.064 mm", "7/0.064 mm")]
    [InlineData("7/.064 inch", "7/.064 in")]
    [InlineData("18 SWG", "18 SWG")]
    [InlineData("swg 18 solid", "18 SWG")]
    [InlineData("18 S.W.G.", "18 SWG")]
    [InlineData("41 SWG", null)]
    [InlineData("0/0.30", null)]
    [InlineData("14/9", null)]
    [InlineData("18 SWG stranded", null)]
    public void Wire_sizes(string text, string? name)
    {
        Assert.Equal(name is not null, WireText.TryParse(text, out Calc.WireSize? wire, out TextProblem? problem));
        Assert.Equal(name is null, problem is not null);
        Assert.Equal(name, wire?.Name);
        if (name is not null)
            Assert.True(WireTable.TryFind(name, out Calc.WireSize? again) && again == wire);
    }

    [Theory]
    [InlineData("16", "16 AWG|16 mm2")]
    [InlineData("18", "18 AWG")]
    [InlineData("0.75", "0.75 mm2")]
    [InlineData("0.7", "0.75 mm2")]
    [InlineData("12.6", null)]
    [InlineData("2 AWG", null)]
    [InlineData("17.2 AWG stranded", "17 AWG stranded")]
    [InlineData("1.6 sq mm", "1.5 mm2")]
    [InlineData("1,5 mm2", "1.5 mm2")]
    [InlineData("0.75 mn2", "0.75 mm2")]
    [InlineData("16 AGW", "16 AWG")]
    [InlineData("30 mm2", null)]
    [InlineData("3 mm", null)]
    [InlineData("14/0.03 mn", null)]
    [InlineData("thick", null)]
    public void A_wire_size_that_does_not_exist_offers_the_nearest(string text, string? nearest)
    {
        Assert.False(WireText.TryParse(text, out _, out TextProblem? problem));
        Assert.Equal(nearest?.Split('|') ?? [], problem.Nearest);
    }

    [Theory]
    [InlineData(
        "0.75",
        "'0.75' has no unit; write a cross-section such as 0.75 mm2, a gauge such as 18 AWG or strands such as 14/0.30"
            + "; did you mean '0.75 mm2'?"
    )]
    [InlineData(
        "3 mm",
        "'3 mm' is a diameter, which does not give the size: insulation differs; write the cross-section, such as 0.75 "
            + "mm2, or count the strands and measure one, such as 14/0.30"
    )]
    [InlineData(
        "7/.064",
        "'7/.064' does not say whether its strands are .064 mm or .064 inch; write the unit, such as 7/0.064 mm or "
            + "7/.064 in"
    )]
    public void A_text_that_is_nearly_a_wire_size_is_answered_with_what_it_lacks(string text, string message)
    {
        Assert.False(WireText.TryParse(text, out _, out TextProblem? problem));
        Assert.Equal(message, problem.ToString());
    }

    // A suggestion is never more than a fifth off in section; both readings of a bare number are what it says.
    [Property(MaxTest = 500)]
    public void No_suggestion_for_a_section_is_more_than_a_fifth_off(ushort hundredths)
    {
        double section = hundredths / 100.0;
        if (WireText.TryParse(FormattableString.Invariant($"{section} mm2"), out _, out TextProblem? problem))
            return;
        foreach (string name in problem.Nearest)
        {
            Assert.True(WireTable.TryFind(name, out Calc.WireSize? near));
            Assert.InRange(near.CopperArea.SquareMillimeters, section * 0.8 - 1e-9, section * 1.2 + 1e-9);
        }
    }

    [Theory]
    [InlineData("watts", "watts", 0)]
    [InlineData("WATTS", "watts", 0)]
    [InlineData("wats", "watts", 1)]
    [InlineData("lwo", "low", 1)]
    [InlineData("", "abc", 3)]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("a cart", "cat", 3)]
    public void Edit_distance(string left, string right, int distance) =>
        Assert.Equal(distance, SpellingSuggestions.Distance(left, right));

    [Property(MaxTest = 500)]
    public void A_bound_on_the_edits_tells_the_same_of_all_within_it(byte[] left, byte[] right, byte bound)
    {
        // Of three letters, so that words are near each other.
        string a = string.Concat(left.Select(b => "abc"[b % 3])),
            b = string.Concat(right.Select(x => "abc"[x % 3]));
        int edits = SpellingSuggestions.Distance(a, b),
            most = bound % 5,
            bounded = SpellingSuggestions.Distance(a, b, most);
        Assert.Equal(edits, Reference(a, b));
        Assert.True(
            edits <= most ? bounded == edits : bounded > most,
            $"{a} {b}: {edits} edits, with at most {most} counted {bounded}"
        );
    }

    // The whole table of costs, as the definition has it.
    private static int Reference(string a, string b)
    {
        var cost = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
            for (int j = 0; j <= b.Length; j++)
            {
                int best =
                    i == 0 || j == 0
                        ? i + j
                        : Math.Min(
                            cost[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1),
                            Math.Min(cost[i - 1, j], cost[i, j - 1]) + 1
                        );
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    best = Math.Min(best, cost[i - 2, j - 2] + 1);
                cost[i, j] = best;
            }

        return cost[a.Length, b.Length];
    }
}
