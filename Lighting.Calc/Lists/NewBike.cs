namespace Lighting.Calc;

/// <summary>Lists of an example bike, to be changed into one's own: headings, rows that can be checked at once, and
/// remarks on what to fill in.</summary>
/// <remarks>Its sizes are common practice, no source: thin-wall cable, and fuses that suit its load and
/// wires.</remarks>
internal sealed class NewBike
{
    private readonly NewBikeOptions _options;
    private readonly List<string> _lamps = ["circuit,lamp,code,type,quantity,amps,lit when,duty,feed,return,notes"];
    private readonly List<string> _runs = ["run,from,to,wire,length,joints,colour,notes"];
    private readonly List<string> _switches = ["switch,from,to,closed in,has off,momentary,notes"];
    private readonly List<string> _fuses = ["fuse,from,to,rating,style,notes"];

    private NewBike(NewBikeOptions options) => _options = options;

    private bool HasBattery => !_options.HasLightingCoil;

    private bool OneFuse => HasBattery && !_options.HasSeveralFuses;

    // Small wires and those that feed several loads.
    private string Small => _options.IsSixVolts ? "1.5 mm2" : "1 mm2";

    private string Large => _options.IsSixVolts ? "4 mm2" : "2 mm2";

    // What must hold besides a lamp's own switch: one ignition switch stands before everything behind one fuse.
    private string Ignition => OneFuse ? "ignition=on; " : "";

    /// <summary>The lists of a new bike.</summary>
    /// <returns>The text of each list by its name, such as <c>lamps.csv</c>.</returns>
    public static IReadOnlyDictionary<string, string> Lists(NewBikeOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return new NewBike(options).Build();
    }

    private Dictionary<string, string> Build()
    {
        Supply();
        Headlamp();
        Rear();
        if (_options.HasIndicators)
            Indicators();
        _runs.Add($"headlamp earth,headlamp return,frame,{Small},0.4 m,1,BK,");
        _runs.Add($"rear earth,rear return,frame,{Small},0.5 m,1,BK,");
        _runs.Add($"frame earth,frame,battery -,{Large},0.3 m,0,BK,every current returns through it");
        var lists = new Dictionary<string, List<string>>
        {
            [ListSchema.Bike.File] = Items(),
            [ListSchema.Lamps.File] = _lamps,
            [ListSchema.Runs.File] = _runs,
            [ListSchema.Switches.File] = _switches,
            [ListSchema.Charging.File] = Charging(),
        };
        if (HasBattery)
            lists[ListSchema.Fuses.File] = _fuses;
        return lists.ToDictionary(l => l.Key, l => string.Join('\n', l.Value) + "\n");
    }

    private List<string> Items()
    {
        List<string> items =
        [
            "item,value,notes",
            "name,My bike,",
            $"system voltage,{(_options.IsSixVolts ? 6 : 12)} V,",
            "earth,negative,positive on many older bikes",
            "cable,thin wall,what the wires are: ordinary or thin wall",
        ];
        if (HasBattery)
            items.AddRange([
                "battery capacity,9 Ah,as marked on the battery",
                "regulator,shunt,series or zener or none",
                "ignition,battery,or magneto",
            ]);
        else
            items.AddRange(["lighting,direct,battery + and - are the ends of the lighting coil", "ignition,magneto,"]);
        if (_options.HasIndicators)
            items.Add("flasher,electronic,or thermal with its flasher load");
        return items;
    }

    // Currents at the charging voltage: measured, or of the maker's handbook.
    private List<string> Charging()
    {
        double[] amperes = HasBattery ? [2, 7, 9.5, 11] : [1.5, 2.1, 2.3, 2.4];
        int[] rpm = [1000, 2000, 3000, 5000];
        if (!HasBattery)
            rpm = [1500, 2500, 4000, 6000];
        double share = _options.IsSixVolts ? HasBattery ? 1.3 : 2 : 1;
        string note = ",measured or of the handbook";
        return
        [
            "rpm,current,notes",
            .. rpm.Zip(amperes, (n, a) => FormattableString.Invariant($"{n},{a * share:0.##} A")).Select(
                (row, i) => row + (i == 0 ? note : ",")
            ),
        ];
    }

    private void Supply()
    {
        if (!HasBattery)
        {
            _runs.Add($"coil wire,battery +,lights in,{Large},0.7 m,1,RD,from the lighting coil");
            return;
        }

        if (OneFuse)
        {
            string rating = _options.IsSixVolts ? "20 A" : "15 A";
            _fuses.Add($"main,fuse in,fuse out,{rating},blade,");
            _runs.Add($"battery lead,battery +,fuse in,{Large},0.2 m,0,RD,no fuse protects it: keep it short");
            _runs.Add($"main feed,fuse out,ignition in,{Large},0.6 m,1,RD,");
            _runs.Add($"lights feed,ignition out,lights in,{Large},0.3 m,1,BU,");
            _runs.Add($"coil wire,ignition out,coil feed,{Small},0.6 m,1,WH,");
        }
        else
        {
            string each = _options.IsSixVolts ? "15 A" : "10 A";
            _fuses.Add("ignition,fuse box,ignition in,7.5 A,blade,");
            _fuses.Add($"lights,fuse box,lights fuse out,{each},blade,");
            _fuses.Add($"signals,fuse box,signals fuse out,{each},blade,");
            _runs.Add($"battery lead,battery +,fuse box,{Large},0.2 m,0,RD,no fuse protects it: keep it short");
            _runs.Add($"lights feed,lights fuse out,lights in,{Large},0.8 m,1,BU,");
            _runs.Add($"signals feed,signals fuse out,signals,{Small},0.6 m,1,GN,");
            _runs.Add($"coil wire,ignition out,coil feed,{Small},0.6 m,1,WH,");
        }

        _switches.Add("ignition,ignition in,ignition out,on,,,");
        _lamps.Add("ignition,ignition coil,,fixed,1,3,ignition=on,1,coil feed,frame,a load like a lamp");
    }

    private void Headlamp()
    {
        (string high, string low) =
            _options.HasLightingCoil ? ("S1 high", "S1 low")
            : _options.IsSixVolts ? ("6V30/24W high", "6V30/24W low")
            : ("R2 high", "R2 low");
        string speedometer = _options.IsSixVolts ? "6V1.8W" : "12V2W";
        _lamps.Add(
            $"headlamp,headlamp high,{high},,1,,{Ignition}lights=main; dip=high,1,high feed,headlamp return,"
                + "a lamp of two filaments is two rows"
        );
        _lamps.Add($"headlamp,headlamp low,{low},,1,,{Ignition}lights=main; dip=low,1,low feed,headlamp return,");
        _lamps.Add(
            $"instruments,speedometer lamp,{speedometer},,1,,{Ignition}lights=park|main,1,speedometer feed,"
                + "headlamp return,"
        );
        _switches.Add("lights,lights in,park line,park|main,,,");
        _switches.Add("lights,lights in,main line,main,,,");
        _switches.Add("dip,dip in,high line,high,no,,never off");
        _switches.Add("dip,dip in,low line,low,no,,");
        _runs.Add($"dip feed,main line,dip in,{Large},0.2 m,1,BU/WH,");
        _runs.Add($"high wire,high line,high feed,{Large},0.4 m,1,BU/RD,base and tracer");
        _runs.Add($"low wire,low line,low feed,{Large},0.4 m,1,BU/YE,");
        _runs.Add($"speedometer wire,park line,speedometer feed,{Small},0.4 m,1,RD,");
        if (!HasBattery)
            return;
        _lamps.Add($"headlamp,pilot lamp,T4W,,1,,{Ignition}lights=park,1,pilot feed,headlamp return,");
        _switches.Add("lights,lights in,pilot line,park,,,");
        _runs.Add($"pilot wire,pilot line,pilot feed,{Small},0.4 m,1,RD/BK,");
    }

    private void Rear()
    {
        string tail = HasBattery ? "P21/5W minor" : "R5W";
        _lamps.Add($"rear lamp,tail lamp,{tail},,1,,{Ignition}lights=park|main,1,tail feed,rear return,");
        _runs.Add($"tail wire,park line,tail feed,{Small},1.4 m,2,RD,");
        if (!HasBattery)
            return;
        _lamps.Add($"rear lamp,stop lamp,P21/5W major,,1,,{Ignition}brake=on,0.1,stop feed,rear return,");
        _switches.Add("brake,brake in,brake out,on,,yes,");
        _runs.Add($"brake feed,{Signals},brake in,{Small},0.5 m,1,GN,");
        _runs.Add($"stop wire,brake out,stop feed,{Small},0.9 m,1,GN/VT,");
    }

    private string Signals => !HasBattery ? "lights in" : OneFuse ? "ignition out" : "signals";

    private void Indicators()
    {
        string code = _options.IsSixVolts || !HasBattery ? "R10W" : "P21W";
        foreach ((string side, string colour) in new[] { ("left", "GN/RD"), ("right", "GN/WH") })
        {
            _lamps.Add(
                $"indicators,{side} indicators,{code},,2,,{Ignition}indicators={side},0.05,{side} feed,frame,"
                    + (side == "left" ? "two lamps on the same two points" : "")
            );
            _switches.Add($"indicators,indicators in,{side} line,{side},,yes,");
            _runs.Add($"{side} wire,{side} line,{side} feed,{Small},0.9 m,1,{colour},");
        }

        _runs.Add($"indicators feed,{Signals},indicators in,{Small},0.5 m,1,GN/BN,");
    }
}
