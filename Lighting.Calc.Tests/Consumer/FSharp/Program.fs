// A bike built in F#, changed by the names of its parts and solved.
open System.Collections.Immutable
open Lighting.Calc
open UnitsNet

let twelve = ElectricPotential.FromVolts 12.0

let lamp =
    FittedLamp(
        Circuit = "lantern",
        Lamp = "lantern",
        Specification = LampSpecification.FromPower(LampType.Filament, twelve, Power.FromWatts 21.0),
        Feed = "lantern feed",
        Return = "frame"
    )

let feed =
    Run(
        Name = "feed",
        From = "fuse out",
        To = "lantern feed",
        Wire = AmericanWireGauge.Stranded 18,
        Length = Length.FromMeters 1.5
    )

let earth =
    Run(
        Name = "earth",
        From = "frame",
        To = Bike.BatteryMinus,
        Wire = AmericanWireGauge.Stranded 16,
        Length = Length.FromMeters 0.5
    )

let fuse =
    Fuse(Name = "main", From = Bike.BatteryPlus, To = "fuse out", Rating = ElectricCurrent.FromAmperes 5.0)

let bike =
    Bike(
        Lamps = ImmutableArray.Create(lamp),
        Runs = ImmutableArray.Create<Run>([| feed; earth |]),
        Fuses = ImmutableArray.Create(fuse)
    )

if not (bike.Validate().IsEmpty) then
    failwithf "%A" (bike.Validate())

let current (bike: Bike) =
    let solver = HarnessNetwork(bike).CreateSolver()
    solver.SetRun("feed", bike.Runs[0].WireResistance(bike.WireTemperature), ElectricResistance.FromMilliohms 50.0)
    solver.Solve(Setting.Empty).TotalCurrent.Amperes

let brighter =
    bike
        .WithLamp("lantern", LampSpecification.FromPower(LampType.Filament, twelve, Power.FromWatts 45.0))
        .WithRun("feed", joints = 2)
        .WithFuse("main", rating = ElectricCurrent.FromAmperes 7.5)

let before, after = current bike, current brighter

if not (after > 1.8 * before) then
    failwithf "%f A, then %f A" before after

printfn "%s" (BikeCheck.Evaluate(brighter).Fuses[0].Headline)
