using System.Globalization;
using System.Text.Json;
using Lighting.Calc.Cli.Rendering;
using UnitsNet;

namespace Lighting.Calc.Tests.Rendering;

/// <summary>Columns declared once, in each form that is made of them.</summary>
public class ColumnsTests
{
    private static readonly Columns<Sample> s_everything = new()
    {
        { "name", "name", s => s.Name },
        { "amps", "currentA", s => s.Current, "F3" },
        { "light %", "relativeLight", s => s.Light },
        { "drop %", "dropPercent", s => s.Light },
        { "lit", "isLit", s => s.IsLit },
        { "volts", "voltageV", s => s.Before, s => s.After },
        { "for people", "", _ => "x" },
        { "forPrograms", s => s.Current },
    };

    private static readonly Sample s_known = new(
        "main",
        ElectricCurrent.FromAmperes(2.5),
        Ratio.FromDecimalFractions(0.25),
        true,
        ElectricPotential.FromVolts(6),
        ElectricPotential.FromVolts(5)
    );

    [Fact]
    public void People_see_what_has_a_title_and_a_change_in_one_column()
    {
        Table table = s_everything.Table([s_known, new Sample(null, null, null, null, null, null)]);
        Assert.Equal(
            ["name", "amps", "light %", "drop %", "lit", "volts", "for people"],
            table.Columns.Select(c => c.Title)
        );
        Assert.Equal([false, true, true, true, false, true, false], table.Columns.Select(c => c.IsNumber));
        Assert.Equal(["main", "2.500", "25.0", "25.0", "yes", "6.00→5.00", "x"], table.Rows[0].Select(c => c.Text));
        Assert.Equal(["", "-", "-", "-", "unknown", "-→-", "x"], table.Rows[1].Select(c => c.Text));
    }

    [Fact]
    public void Csv_has_a_share_in_percent_and_a_change_in_two_columns()
    {
        Columns<Sample> columns = s_everything.Only(
            "name",
            "currentA",
            "relativeLight",
            "dropPercent",
            "isLit",
            "voltageV"
        );
        Assert.Equal(
            "name,currentA,relativeLightPercent,dropPercent,isLit,voltageBeforeV,voltageAfterV\n"
                + "main,2.5,25,25,yes,6,5\n,,,,unknown,,\n",
            Csv(columns.Spreadsheet([s_known, new Sample(null, null, null, null, null, null)]))
        );
    }

    [Fact]
    public void Json_has_a_share_as_a_fraction_unless_its_key_says_percent()
    {
        using var json = JsonDocument.Parse(Json(s_everything, s_known));
        Assert.Equal(
            [
                "schema",
                "result",
                "name",
                "currentA",
                "relativeLight",
                "dropPercent",
                "isLit",
                "voltageV",
                "forPrograms",
            ],
            json.RootElement.EnumerateObject().Select(p => p.Name)
        );
        Assert.Equal(0.25, json.RootElement.GetProperty("relativeLight").GetDouble());
        Assert.Equal(25, json.RootElement.GetProperty("dropPercent").GetDouble());
        Assert.True(json.RootElement.GetProperty("isLit").GetBoolean());
        Assert.Equal(5, json.RootElement.GetProperty("voltageV").GetProperty("after").GetDouble());
    }

    [Fact]
    public void A_table_has_the_columns_asked_for_in_the_order_asked_for() =>
        Assert.Equal(["currentA", "name"], s_everything.Only("currentA", "name").Keys);

    [Theory]
    [InlineData(4.000000000000286, "4")]
    [InlineData(0.30000000000000004, "0.3")]
    [InlineData(12.726651921748555, "12.7266519217")]
    [InlineData(-1.26008592946305e-7, "-1.26008592946E-07")]
    [InlineData(1999999999999.5, "2000000000000")]
    public void Programs_are_given_numbers_to_twelve_significant_digits(double number, string written)
    {
        var columns = new Columns<double> { { "number", "number", n => n } };
        Assert.Equal($"number\n{written}\n", Csv(columns.Spreadsheet([number])));
        Assert.Contains($"\"number\": {written}\n", Json(columns, number), StringComparison.Ordinal);
    }

    [Fact]
    public void A_count_is_written_whole_however_long_it_is()
    {
        var columns = new Columns<long> { { "seed", "seed", n => n } };
        Assert.Contains("\"seed\": 9007199254740993\n", Json(columns, 9007199254740993), StringComparison.Ordinal);
    }

    private static string Csv(SpreadsheetOnly table)
    {
        var output = new StringWriter { NewLine = "\n" };
        CsvRenderer.Render(new Document("t", "v", null, () => [table], _ => { }), output);
        return output.ToString().Replace("\r\n", "\n", StringComparison.Ordinal);
    }

    private static string Json<T>(Columns<T> columns, T item)
    {
        var output = new StringWriter(CultureInfo.InvariantCulture);
        JsonRenderer.Render(output, new Document("t", "v", null, () => [], json => columns.Write(json, item)));
        return output.ToString();
    }

    private sealed record Sample(
        string? Name,
        ElectricCurrent? Current,
        Ratio? Light,
        bool? IsLit,
        ElectricPotential? Before,
        ElectricPotential? After
    );
}
