' A bike built in Visual Basic, changed by the names of its parts and solved.
Imports System.Collections.Immutable
Imports Lighting.Calc
Imports UnitsNet

Module Program
    Sub Main()
        Dim twelve = ElectricPotential.FromVolts(12)
        Dim bike As New Bike With {
            .Lamps = ImmutableArray.Create(
                New FittedLamp With {
                    .Circuit = "lantern",
                    .Lamp = "lantern",
                    .Specification = LampSpecification.FromPower(LampType.Filament, twelve, Power.FromWatts(21)),
                    .Feed = "lantern feed",
                    .Return = "frame"
                }),
            .Runs = ImmutableArray.Create(
                New Run With {
                    .Name = "feed",
                    .From = "fuse out",
                    .To = "lantern feed",
                    .Wire = AmericanWireGauge.Stranded(18),
                    .Length = Length.FromMeters(1.5)
                },
                New Run With {
                    .Name = "earth",
                    .From = "frame",
                    .To = Bike.BatteryMinus,
                    .Wire = AmericanWireGauge.Stranded(16),
                    .Length = Length.FromMeters(0.5)
                }),
            .Fuses = ImmutableArray.Create(
                New Fuse With {
                    .Name = "main",
                    .From = Bike.BatteryPlus,
                    .To = "fuse out",
                    .Rating = ElectricCurrent.FromAmperes(5)
                })
        }
        If Not bike.Validate().IsEmpty Then Throw New InvalidOperationException(bike.Validate()(0).Message)
        Dim brighter = bike.
            WithLamp("lantern", LampSpecification.FromPower(LampType.Filament, twelve, Power.FromWatts(45))).
            WithRun("feed", joints:=2).
            WithFuse("main", rating:=ElectricCurrent.FromAmperes(7.5))
        If Not Current(brighter) > 1.8 * Current(bike) Then Throw New InvalidOperationException("The brighter lamp does not draw more.")
        Console.WriteLine(BikeCheck.Evaluate(brighter).Fuses(0).Headline)
    End Sub

    Private Function Current(bike As Bike) As Double
        Dim solver = New HarnessNetwork(bike).CreateSolver()
        solver.SetRun("feed", bike.Runs(0).WireResistance(bike.WireTemperature), ElectricResistance.FromMilliohms(50))
        Return solver.Solve(Setting.Empty).TotalCurrent.Amperes
    End Function
End Module
