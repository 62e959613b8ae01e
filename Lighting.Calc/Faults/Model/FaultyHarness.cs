namespace Lighting.Calc;

/// <summary>The harness in a setting under one or two faults: the same for the live circuit, the cold circuit and
/// visual readings.</summary>
internal sealed class FaultyHarness(FaultCircuit circuit)
{
    // Of the last setting, which mostly is the next one too.
    private Setting? _setting;
    private ContactSet _closed;

    // The contacts that relays close, as it was set last.
    private ContactSet _pulledIn;

    /// <summary>Resistance that faults add to each conductor.</summary>
    public double[] AddedOhms { get; } = new double[circuit.Parts.Length];

    /// <summary>Whether a conductor is an open contact or a blown fuse.</summary>
    public bool[] IsOpen { get; } = new bool[circuit.Parts.Length];

    /// <summary>Resistance from each point to the frame; infinity for none.</summary>
    public double[] ToFrameOhms { get; } = new double[circuit.Points.Length];

    /// <summary>Resistance that faults add between each holder and its return point.</summary>
    public double[] HolderOhms { get; } = new double[circuit.Holders.Length];

    public LampFaultChange[] Lamps { get; } = new LampFaultChange[circuit.Lamps.Length];

    /// <summary>The two points at which circuits touch; null for none.</summary>
    public (int A, int B)? Bridge { get; set; }

    /// <summary>Index of the wires that are exchanged; −1 for none.</summary>
    public int Crossing { get; set; }

    /// <summary>Index of the run whose connector is apart; −1 for none.</summary>
    public int UnpluggedRun { get; private set; }

    /// <summary>The fuse whose holder an ammeter's leads bypass; −1 for none.</summary>
    public int BypassedHolder { get; set; }

    /// <summary>Resistance that faults add to the battery or coil.</summary>
    public double SourceOhms { get; set; }

    /// <summary>Share that faults leave of the source's voltage.</summary>
    public double VoltageShare { get; set; }

    /// <summary>Share that faults leave of the generator's current.</summary>
    public double OutputShare { get; set; }

    /// <summary>Share that faults leave of the generator's voltage: weak magnets.</summary>
    public double MagnetShare { get; set; }

    /// <summary>Share of its voltage that the regulator holds.</summary>
    public double HeldShare { get; set; }

    /// <summary>The lead of the generator whose phase is open; 0 for none.</summary>
    public int OpenLead { get; set; }

    /// <summary>Whether a winding of the generator touches the frame.</summary>
    public bool IsWindingEarthed { get; set; }

    /// <summary>Resistance that faults add between generator and battery.</summary>
    public double ChargingLeadOhms { get; set; }

    public void Set(Setting setting, in FaultMember first, in FaultMember? second)
    {
        Array.Clear(AddedOhms);
        Array.Clear(IsOpen);
        Array.Fill(ToFrameOhms, double.PositiveInfinity);
        Array.Clear(HolderOhms);
        Array.Clear(Lamps);
        (SourceOhms, VoltageShare) = (0, 1);
        (OutputShare, MagnetShare, HeldShare, ChargingLeadOhms) = (1, 1, 1, 0);
        (OpenLead, IsWindingEarthed) = (0, false);
        (Bridge, Crossing, BypassedHolder, UnpluggedRun) = (null, -1, -1, -1);
        if (!ReferenceEquals(setting, _setting))
            (_setting, _closed) = (setting, circuit.Graph.Switches.ClosedIn(setting));
        for (int i = 0; i < circuit.Contacts.Length; i++)
            IsOpen[circuit.Contacts[i]] = !_closed.Has(i);
        first.Family.PutIn(this, first.Case);
        if (second is { } other)
            other.Family.PutIn(this, other.Case);
        _pulledIn = _closed;
        if (first.Family is not NoFault || second is not null)
            FollowRelays();
    }

    /// <summary>Relays drop out: the battery is disconnected.</summary>
    public void RestRelays()
    {
        if (circuit.Graph.Switches.Relays is { } relays)
            SetRelays(relays.AtRest(_closed));
    }

    // A relay drops out that a fault, or what is unplugged, leaves without the voltage to pull in.
    private void FollowRelays()
    {
        if (circuit.Graph.Switches.Relays is not { } relays)
            return;
        ContactSet switched = ContactSet.Where(
            circuit.Contacts.Length,
            i => !circuit.Bike.Switches[i].IsRelay && !IsOpen[circuit.Contacts[i]]
        );
        double volts = circuit.Supply.FullVolts * VoltageShare;
        SetRelays(
            relays
                .Of(
                    switched,
                    (relay, part) =>
                    {
                        RelayCoil coil = circuit.Bike.Lamps[relays.Coils[relay]].Coil!;
                        int conductor = part.Kind switch
                        {
                            HarnessPartKind.Run => circuit.Runs[part.Index],
                            HarnessPartKind.Contact => circuit.Contacts[part.Index],
                            _ => circuit.Fuses[part.Index],
                        };
                        // As much as leaves the pull-in voltage to the coil.
                        return Lamps[relays.Coils[relay]].Dead == 0
                            && (part.Kind == HarnessPartKind.Contact || !IsOpen[conductor])
                            && AddedOhms[conductor] < coil.Resistance.Ohms * (volts / coil.PullInVoltage.Volts - 1);
                    }
                )
                .Closed
        );
    }

    // A contact that is itself at fault stays as the fault has it.
    private void SetRelays(ContactSet closed)
    {
        for (int i = 0; i < circuit.Contacts.Length; i++)
            if (circuit.Bike.Switches[i].IsRelay && IsOpen[circuit.Contacts[i]] != _pulledIn.Has(i))
                IsOpen[circuit.Contacts[i]] = !closed.Has(i);
        _pulledIn = closed;
    }

    /// <summary>Puts in what a test itself changes: a test lamp in the place of a fuse, a good lamp, a connector that
    /// is apart or a lamp that is out.</summary>
    public void Set(in TestPlace test)
    {
        if (test.Unplugged >= 0)
            Unplug(circuit.MeasuredParts[test.Unplugged]);
        // A horn or an ignition has no socket.
        for (int lamp = 0; test.Unplugged == TestPlace.EveryLampOut && lamp < Lamps.Length; lamp++)
            if (circuit.GivesLight(lamp))
                Unplug(lamp);
        if (circuit.FuseOf(test) is >= 0 and var fuse)
            IsOpen[circuit.Fuses[fuse]] = true;
        else if (test.Instrument == Instrument.GoodLamp)
            Lamps[test.Index] = default;
        if (test.IsUnplugged || circuit.FuseOf(test) >= 0)
            FollowRelays();
    }

    /// <summary>Whether another harness has battery, coil and generator in the same state.</summary>
    public bool HasSameSource(FaultyHarness other) =>
        (SourceOhms, VoltageShare, OutputShare, MagnetShare, HeldShare, OpenLead, IsWindingEarthed)
            == (
                other.SourceOhms,
                other.VoltageShare,
                other.OutputShare,
                other.MagnetShare,
                other.HeldShare,
                other.OpenLead,
                other.IsWindingEarthed
            )
        && (ChargingLeadOhms, BypassedHolder) == (other.ChargingLeadOhms, other.BypassedHolder);

    // A bulb leaves its socket with both filaments.
    private void Unplug(MeasuredPart part)
    {
        if (part.Lamp < 0)
        {
            IsOpen[part.Conductor] = true;
            UnpluggedRun = circuit.Runs.IndexOf(part.Conductor);
            return;
        }

        for (int lamp = 0; lamp < Lamps.Length; lamp++)
            if (lamp == part.Lamp || FilamentsExchanged.AreInOneBulb(circuit.Bike, lamp, part.Lamp))
                Unplug(lamp);
    }

    private void Unplug(int lamp) =>
        Lamps[lamp] = new LampFaultChange { Dead = circuit.Bike.Lamps[lamp].Quantity };

    /// <summary>Joins a point to the frame, which blows the fuse before it where the source can.</summary>
    public void Short(int point)
    {
        ToFrameOhms[point] = FaultCircuit.ShortOhms;
        if (circuit.FuseBefore[point] is >= 0 and var fuse)
            IsOpen[circuit.Fuses[fuse]] = true;
    }
}
