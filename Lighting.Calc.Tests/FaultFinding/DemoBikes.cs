using System.Collections.Concurrent;

namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>The demo bikes that have wires, and a finder for each, made once.</summary>
internal static class DemoBikes
{
    private static readonly ConcurrentDictionary<string, Lazy<FaultFinder>> s_finders = new();

    public static TheoryData<string> Names =>
        [
            .. Directory
                .GetDirectories(Folder)
                .Select(d => Path.GetFileName(d)!)
                .Where(n => Load(n).HasNetwork)
                .Order(StringComparer.Ordinal),
        ];

    private static string Folder
    {
        get
        {
            for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
                if (Directory.Exists(Path.Combine(at.FullName, "shared", "bikes")))
                    return Path.Combine(at.FullName, "shared", "bikes");
            throw new DirectoryNotFoundException("No folder shared/bikes above the tests.");
        }
    }

    /// <summary>A bike that is none of the demo's: 29 wires, two fuses in a row, two brake switches, and earths that
    /// run in loops.</summary>
    public const string TwoFuses = "commuter with two fuses";

    public static Bike Load(string name)
    {
        if (name == TwoFuses)
            return WithSecondFuse(
                BikeLists
                    .Read(Path.Combine(Folder, "..", "..", "Lighting.Calc.Tests", "ForeignBikes", "commuter"))
                    .Value.Bike
            );
        ListResult<BikeLists> lists = BikeLists.Read(Path.Combine(Folder, name));
        return lists.Value.Bike;
    }

    private static Bike WithSecondFuse(Bike commuter)
    {
        Run feed = commuter.Runs.Single(r => r.Name == "light feed");
        return commuter with
        {
            Fuses =
            [
                .. commuter.Fuses,
                commuter.Fuses[0] with
                {
                    Name = "lights",
                    From = "light fuse in",
                    To = "light fuse out",
                    Rating = UnitsNet.ElectricCurrent.FromAmperes(10),
                },
            ],
            Runs =
            [
                .. commuter.Runs.Select(r => r == feed ? r with { From = "light fuse out" } : r),
                feed with
                {
                    Name = "light fuse lead",
                    To = "light fuse in",
                },
            ],
        };
    }

    public static FaultFinder Finder(string name) =>
        s_finders.GetOrAdd(name, n => new Lazy<FaultFinder>(() => new FaultFinder(Load(n)))).Value;

    /// <summary>The same with every test costing the same, so that it chooses for the fewest tests.</summary>
    public static FaultFinder FewestTests(string name) =>
        s_finders
            .GetOrAdd(
                name + "=",
                _ => new Lazy<FaultFinder>(() =>
                    new FaultFinder(
                        Load(name),
                        new FaultFindingOptions
                        {
                            TestCosts =
                            [
                                .. FaultFindingOptions.PublishedTestCosts.Select(c =>
                                    c with
                                    {
                                        Cost = c.Test
                                            is "other setting"
                                                or "held switch"
                                                or "two points"
                                                or "fuse out"
                                                or "jumper"
                                                or "unplugged"
                                            ? 1e-6
                                            : 1,
                                        Source = "every test counts as one",
                                    }
                                ),
                            ],
                        }
                    )
                )
            )
            .Value;
}
