using System.Globalization;
using Lighting.Calc.Lamps;
using Lighting.Calc.Tables;

namespace Lighting.Calc.Tests.Tables;

/// <summary>What every published table must be: sourced, free of doubles, its numbers numbers.</summary>
public class PublishedTableTests
{
    // The columns that together name a row.
    private static readonly Dictionary<string, string[]> Keys = new()
    {
        ["ambient-derating"] = ["conductor_limit_celsius", "ambient_celsius"],
        ["bundle-derating"] = ["standard", "wires", "loading_percent"],
        ["conductors-awg"] = ["gauge"],
        ["conductors-metric"] = ["area_mm2"],
        ["conductors-other-standards"] = ["standard", "nominal_size"],
        ["conductors-stranded-awg"] = ["basis"],
        ["constants"] = ["symbol"],
        ["current-ratings"] = ["family", "size"],
        ["current-ratings-by-insulation"] = ["gauge", "conductor_limit_celsius"],
        ["faa-wire"] = ["gauge"],
        ["fault-priors"] = ["fault"],
        ["fuse-gates"] = ["style", "percent_of_rating"],
        ["fuse-ratings"] = ["style", "rating_a"],
        ["fuse-temperature"] = ["style"],
        ["lamp-exponents"] = ["filament_kind"],
        ["lamps"] = ["code", "filament", "system_v"],
        ["lead-acid"] = ["state_of_charge_percent"],
        ["led-classes"] = ["code"],
        ["test-efforts"] = ["test"],
        ["tungsten"] = ["temperature_k"],
    };

    private static readonly string[] UnitEndings =
        ["_v", "_a", "_w", "_s", "_k", "_mm2", "_mil", "_cmil", "_mohm", "_mv", "_percent", "_celsius", "_ohm_per_km", "_ohm_per_kft", "_uohm_cm", "_per_kelvin", "_12v_v"];

    public static TheoryData<string> Names => [.. PublishedTable.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_row_names_its_source(string name)
    {
        PublishedTable table = PublishedTable.Load(name);
        Assert.NotEmpty(table.Rows);
        Assert.All(table.Read(), row => Assert.False(string.IsNullOrWhiteSpace(row.Text("source"))));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_two_rows_have_the_same_key(string name)
    {
        Assert.True(Keys.ContainsKey(name), $"Say in this test which columns name a row of the table '{name}'.");
        IEnumerable<string> keys = PublishedTable.Load(name).Read().Select(row => string.Join('|', Keys[name].Select(row.Text)));
        Assert.All(keys.GroupBy(k => k), group => Assert.True(group.Count() == 1, $"'{group.Key}' stands {group.Count()} times"));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_column_that_ends_in_a_unit_holds_numbers(string name)
    {
        PublishedTable table = PublishedTable.Load(name);
        foreach (string column in table.Columns.Where(c => UnitEndings.Any(e => c.EndsWith(e, StringComparison.Ordinal))))
            foreach (TableRow row in table.Read())
                _ = row.NumberOrNull(column);
    }

    [Fact]
    public void Every_constant_has_a_number_and_a_known_unit()
    {
        string[] units = PublishedTable.Load("constants").Read().Select(r => { _ = r.Number("value"); return r.Text("unit"); }).Distinct().ToArray();
        Assert.All(units, unit => Assert.Matches("^[A-Za-z0-9%/ .°µ-]+$", unit));
    }

    [Fact]
    public void There_are_at_least_forty_lamp_rows_of_each_kind_of_use()
    {
        Assert.True(LampTable.All.Length >= 40);
        foreach (string use in new[] { "headlamp", "stop", "tail", "position", "indicator", "instrument" })
            foreach (double volts in new[] { 6.0, 12.0 })
                Assert.Contains(LampTable.All, l => l.Use.Split('|').Contains(use) && l.SystemVoltage.Volts == volts);
    }

    [Fact]
    public void A_missing_source_a_double_and_a_bad_number_are_refused_by_these_very_checks()
    {
        PublishedTable table = PublishedTable.Parse("probe", "gauge,length_mm2,source\n1,2,a\n1,x,\n");
        Assert.Throws<InvalidDataException>(() => table.Read().Select(r => r.NumberOrNull("length_mm2")).ToList());
        Assert.Contains(table.Read(), r => r.Text("source").Length == 0);
        Assert.Single(table.Read().Select(r => r.Text("gauge")).Distinct());
    }

    [Fact]
    public void An_unknown_table_is_refused_with_the_known_names()
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() => PublishedTable.Load("lights"));
        Assert.Contains("lamps", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_reader_keeps_printed_digits()
    {
        TableRow row = PublishedTable.Load("conductors-awg").Read().Single(r => r.Text("gauge") == "13");
        Assert.Equal("2.00", row.Text("printed_ohm_per_kft_handbook_100"));
        Assert.Equal(2.0, double.Parse(row.Text("printed_ohm_per_kft_handbook_100"), CultureInfo.InvariantCulture));
    }
}
