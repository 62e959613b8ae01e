using System.Globalization;

namespace Lighting.Calc.Tests.Tables;

/// <summary>What every published table must be: sourced, free of doubles, its numbers numbers.</summary>
public class PublishedTableTests
{
    // The columns that together name a row.
    private static readonly Dictionary<string, string[]> s_keys = new()
    {
        ["ambient-derating"] = ["conductor_limit_celsius", "ambient_celsius"],
        ["cable-ratings"] = ["kind", "area_mm2"],
        ["bundle-derating"] = ["standard", "wires", "loading_percent"],
        ["conductors-awg"] = ["gauge"],
        ["cable-diameters"] = ["kind", "area_mm2"],
        ["conductors-metric"] = ["area_mm2"],
        ["conductors-strands"] = ["strands", "strand_diameter", "unit"],
        ["conductors-swg"] = ["gauge"],
        ["conductors-other-standards"] = ["standard", "nominal_size"],
        ["conductors-stranded-awg"] = ["basis"],
        ["constants"] = ["symbol"],
        ["current-ratings"] = ["family", "size"],
        ["current-ratings-by-insulation"] = ["gauge", "conductor_limit_celsius"],
        ["faa-wire"] = ["gauge"],
        ["fault-priors"] = ["fault"],
        ["fuse-gates"] = ["style", "from_rating_a", "percent_of_rating"],
        ["fuse-melting"] = ["style", "rating_a"],
        ["fuse-pulses"] = ["pulses"],
        ["fuse-ratings"] = ["style", "rating_a"],
        ["fuse-temperature"] = ["style"],
        ["older-fuses"] = ["kind", "marked_a"],
        ["lamp-exponents"] = ["filament_kind"],
        ["lamps"] = ["code", "filament", "system_v"],
        ["lead-acid"] = ["state_of_charge_percent"],
        ["drop-limits"] = ["kind"],
        ["led-classes"] = ["code"],
        ["test-costs"] = ["test"],
        ["tolerances"] = ["part", "kind"],
        ["tungsten"] = ["temperature_k"],
        ["wire-colours"] = ["code"],
    };

    // Each unit a column may end in, longest first where one ends in another; the first that fits is the column's.
    private static readonly string[] s_units =
    [
        "ohm_per_kft_handbook_100",
        "ohm_per_kft_circular_31",
        "ohm_per_kft",
        "ohm_per_km",
        "uohm_cm",
        "mohm",
        "percent_per_kelvin",
        "percent_of_rating",
        "percent",
        "celsius",
        "a2s",
        "cmil",
        "mil",
        "mm2",
        "mm",
        "in",
        "mv",
        "watts",
        "v",
        "a",
        "w",
        "s",
        "k",
        "h",
    ];

    // Columns of plain numbers, and columns of words.
    private static readonly string[] s_pure =
    [
        "gauge",
        "strands",
        "strand_diameter",
        "wires",
        "pulses",
        "factor",
        "specific_gravity",
        "resistance_ratio",
        "lumens",
        "mscp",
        "current",
        "light",
        "life",
        "value",
        "weight",
        "cost",
        "minus",
        "plus",
    ];
    private static readonly string[] s_words =
    [
        "source",
        "standard",
        "basis",
        "symbol",
        "quantity",
        "unit",
        "family",
        "size",
        "condition",
        "style",
        "colour",
        "filament_kind",
        "code",
        "filament",
        "technology",
        "use",
        "cap",
        "reference_basis",
        "socket_class",
        "replaces_socket_class",
        "type",
        "two_function",
        "construction",
        "nominal_size",
        "strands_mm",
        "fault",
        "test",
        "part",
        "kind",
        "shape",
    ];

    private static readonly string[] s_constantUnits =
    [
        "1",
        "%",
        "1/K",
        "1/min",
        "A",
        "K",
        "times",
        "A/Ah",
        "Ah",
        "C",
        "Mohm",
        "V",
        "g/cm3",
        "mm2",
        "h",
        "in",
        "lm/cd",
        "mV",
        "mm",
        "mm2",
        "mohm",
        "ohm",
        "ohm cmil/ft",
        "ohm g/m2",
        "ohm m",
        "ohm mm2/m",
        "s",
        "V/K",
    ];

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
        Assert.True(s_keys.ContainsKey(name), $"Say in this test which columns name a row of the table '{name}'.");
        IEnumerable<string> keys = PublishedTable
            .Load(name)
            .Read()
            .Select(row => string.Join('|', s_keys[name].Select(row.Text)));
        Assert.All(
            keys.GroupBy(k => k),
            group => Assert.True(group.Count() == 1, $"'{group.Key}' stands {group.Count()} times")
        );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_column_is_of_words_of_plain_numbers_or_ends_in_a_known_unit(string name) =>
        Assert.Empty(Faults(PublishedTable.Load(name)));

    [Fact]
    public void There_are_at_least_forty_lamp_rows_of_each_kind_of_use()
    {
        Assert.True(LampTable.All.Length >= 40);
        foreach (string use in new[] { "headlamp", "stop", "tail", "position", "indicator", "instrument" })
            foreach (double volts in new[] { 6.0, 12.0 })
                Assert.Contains(LampTable.All, l => l.Use.Split('|').Contains(use) && l.SystemVoltage.Volts == volts);
    }

    [Theory]
    [InlineData("gauge,drop_furlong,source\n1,2,a\n", "the column 'drop_furlong' ends in no known unit")]
    [InlineData("gauge,area_mm2,source\n1,2x,a\n", "the table 'probe' has '2x' where 'area_mm2' must be a number.")]
    [InlineData(
        "gauge,area_mm2,source\n1,\"2,5\",a\n",
        "the table 'probe' has '2,5' where 'area_mm2' must be a number."
    )]
    [InlineData("symbol,value,unit,source\nx,2,furlong,a\n", "the unit 'furlong' is not known")]
    public void A_table_with_an_unreadable_unit_or_number_would_be_refused(string text, string fault) =>
        Assert.Equal([fault], Faults(PublishedTable.Parse("probe", text)), StringComparer.OrdinalIgnoreCase);

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

    private static IEnumerable<string> Faults(PublishedTable table)
    {
        foreach (string column in table.Columns.Except(s_words))
        {
            if (
                !s_pure.Contains(column)
                && !s_units.Any(u => column == u || column.EndsWith("_" + u, StringComparison.Ordinal))
            )
            {
                yield return $"the column '{column}' ends in no known unit";
                continue;
            }

            foreach (TableRow row in table.Read())
                if (Fault(row, column) is { } fault)
                    yield return fault;
        }

        if (table.Columns.Contains("unit"))
            foreach (
                string unit in table
                    .Read()
                    .Select(r => r.Text("unit"))
                    .Where(u => !s_constantUnits.Contains(u))
                    .Distinct()
            )
                yield return $"the unit '{unit}' is not known";
    }

    private static string? Fault(TableRow row, string column)
    {
        try
        {
            _ = row.NumberOrNull(column);
            return null;
        }
        catch (InvalidDataException fault)
        {
            return fault.Message;
        }
    }
}
