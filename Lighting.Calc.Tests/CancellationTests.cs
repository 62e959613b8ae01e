using System.Reflection;
using Lighting.Calc.Tests.FaultFinding;

namespace Lighting.Calc.Tests;

/// <summary>Work that may take over a second, on a bike of many settings, stops when it is told to.</summary>
public class CancellationTests
{
    private static readonly Bike s_bike = DemoBikes.Load("valley-twin");

    // What each does with a token. A method whose token is not here fails the second test.
    private static readonly Dictionary<string, Action<CancellationToken>> s_work = new()
    {
        ["BikeCheck.Evaluate"] = stop => BikeCheck.Evaluate(s_bike, null, stop),
        ["CatalogueCheck.Evaluate"] = stop => new CatalogueCheck().Evaluate(s_bike, null, stop),
        ["BikeSolution.Solve"] = stop => BikeSolution.Solve(s_bike, new CheckOptions(), stop),
        ["FuseCheck.Evaluate"] = stop => FuseCheck.Evaluate(s_bike, Points(), null, stop),
        ["UnfusedRuns.Findings"] = stop => UnfusedRuns.Findings(s_bike, Settings(), stop),
        ["ListSource.FromJsonAsync"] = stop =>
            ListSource.FromJsonAsync(new MemoryStream([1]), stop).GetAwaiter().GetResult(),
        ["ListSource.FromStreamAsync"] = stop =>
            ListSource.FromStreamAsync(new MemoryStream([1]), stop).GetAwaiter().GetResult(),
        ["ListSource.WithAsync"] = stop =>
            ListSource.Empty.WithAsync("lamps.csv", new MemoryStream([1]), stop).GetAwaiter().GetResult(),
        ["Swap.Evaluate"] = stop => Swap.Evaluate(s_bike, [], null, stop),
        ["BikeComparison.Evaluate"] = stop => BikeComparison.Evaluate(s_bike, s_bike, null, stop),
        ["FusePlanner.Plan"] = stop => FusePlanner.Plan(s_bike, null, stop),
        ["RelayPlanner.Plan"] = stop => RelayPlanner.Plan(s_bike, s_bike.Lamps[0].Lamp, null, stop),
        ["HarnessSizing.Size"] = stop => HarnessSizing.Size(new HarnessNetwork(s_bike), null, stop),
        ["ToleranceCheck.Evaluate"] = stop => ToleranceCheck.Evaluate(s_bike, null, null, stop),
        ["ExpectedReadings.Calculate"] = stop => ExpectedReadings.Calculate(s_bike, null, stop),
        ["FaultFinder..ctor"] = stop => _ = new FaultFinder(s_bike, null, stop),
        ["FaultFinder.Diagnose"] = stop => DemoBikes.Finder("fell-lightweight").Diagnose([], stop),
    };

    public static TheoryData<string> Work => [.. s_work.Keys];

    [Theory]
    [MemberData(nameof(Work))]
    public void Work_that_is_stopped_ends_with_the_exception_for_it(string name) =>
        Assert.ThrowsAny<OperationCanceledException>(() => s_work[name](new CancellationToken(canceled: true)));

    [Fact]
    public void Every_public_method_that_can_be_stopped_is_tried() =>
        Assert.Empty(
            typeof(Bike)
                .Assembly.GetExportedTypes()
                .SelectMany(t =>
                    t.GetMembers(
                            BindingFlags.Public
                                | BindingFlags.Instance
                                | BindingFlags.Static
                                | BindingFlags.DeclaredOnly
                        )
                        .OfType<MethodBase>()
                )
                .Where(m => m.GetParameters().Any(p => p.ParameterType == typeof(CancellationToken)))
                .Select(m => $"{m.DeclaringType!.Name}.{m.Name}")
                .Except(s_work.Keys)
        );

    private static IReadOnlyList<OperatingPoint> Points() =>
        BikeSolution.Solve(s_bike, new CheckOptions(), TestContext.Current.CancellationToken).Points;

    private static IEnumerable<Setting> Settings() => SettingEnumeration.Of(s_bike, Condition.Always);
}
