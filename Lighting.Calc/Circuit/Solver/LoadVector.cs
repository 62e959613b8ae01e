// The live loads of one solver, sorted by law so that each law runs over one section of plain arrays.
using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Lighting.Calc;

/// <summary>Voltage, current and slope of all live loads; a reversed load has its two slots exchanged here.</summary>
internal sealed class LoadVector
{
    // Room for the vectors of the filament law to run past the filaments, into places that later laws overwrite.
    private static readonly int s_room = Vector512<double>.Count;

    // A constant current has no slope; this one keeps two of them in series from leaving a zero on the diagonal.
    private const double LeastSiemens = 1e-9;

    private readonly Circuit circuit;
    private readonly double[] referenceVolts;
    private readonly double[] strength;
    private readonly double[] emf;
    private readonly int[] placeOfLoad;
    private int filaments;
    private int ballastsEnd;
    private int batteriesEnd;
    private int fixedEnd;
    private int resistorsEnd;

    public LoadVector(Circuit circuit)
    {
        this.circuit = circuit;
        int most = circuit.LoadCount,
            size = most + s_room;
        placeOfLoad = new int[most];
        Laws = new Load[most];
        Plus = new int[most];
        Minus = new int[most];
        Entry = new int[most];
        Locked = new bool[most];
        Volts = new double[size];
        LowVolts = new double[size];
        Amperes = new double[size];
        Siemens = new double[size];
        referenceVolts = new double[size];
        strength = new double[size];
        emf = new double[size];
        Array.Fill(referenceVolts, 1);
    }

    public int Count { get; private set; }

    /// <summary>First place of the drivers, which are last.</summary>
    public int FirstDriver => resistorsEnd;

    public Load[] Laws { get; }

    /// <summary>Slot of the load's own plus, its own minus, and the place of its matrix entry.</summary>
    public int[] Plus { get; }

    public int[] Minus { get; }

    public int[] Entry { get; }

    /// <summary>Drivers held dark, as the resistor Vmin²/P whatever their voltage.</summary>
    public bool[] Locked { get; }

    public double[] Volts { get; }

    public double[] Amperes { get; }

    /// <summary>Of an LED with series resistor and of a battery, what its voltage cannot hold: just above the forward
    /// voltage, and near a battery's own, a rounding of the voltage is much of the current.</summary>
    public double[] LowVolts { get; }

    /// <summary>First place of the LEDs with series resistor and the batteries.</summary>
    public int FirstKnee => filaments;

    public int FirstBehindKnees => batteriesEnd;

    /// <summary>Slope dI/dV.</summary>
    public double[] Siemens { get; }

    /// <summary>Place of a load; −1 when no current can reach it.</summary>
    public int PlaceOf(int load) => placeOfLoad[load];

    /// <summary>Takes over the laws and polarities of a plan's live loads and sorts by law.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="loads">The laws, indexed as in the circuit.</param>
    public void Take(EliminationPlan plan, Load[] loads)
    {
        Array.Fill(placeOfLoad, -1);
        Array.Clear(Locked);
        int place = 0;
        filaments = place = Append(plan, loads, place, LampType.Filament, LampType.Halogen);
        ballastsEnd = place = Append(plan, loads, place, LampType.LedResistor, LampType.LedResistor);
        batteriesEnd = place = Append(plan, loads, place, LampType.Resistor, LampType.Resistor, isBattery: true);
        fixedEnd = place = Append(plan, loads, place, LampType.Fixed, LampType.Fixed);
        resistorsEnd = place = Append(plan, loads, place, LampType.Resistor, LampType.Resistor);
        Count = Append(plan, loads, place, LampType.Led, LampType.Led);
        // What runs past the filaments must stay harmless.
        referenceVolts.AsSpan(Count).Fill(1);
        Volts.AsSpan(Count).Clear();
    }

    /// <summary>Current and slope at the present voltage.</summary>
    public void Evaluate()
    {
        EvaluateFilaments();
        const double leak = LedDriverLaw.LeakSiemens;
        for (int j = filaments; j < ballastsEnd; j++)
        {
            double volts = Volts[j];
            double above = volts - referenceVolts[j] + LowVolts[j];
            double quantity = Laws[j].Quantity;
            double siemens = above > 0 ? quantity / strength[j] : 0;
            Siemens[j] = siemens + quantity * leak;
            Amperes[j] = siemens * above + quantity * leak * volts;
        }

        for (int j = ballastsEnd; j < batteriesEnd; j++)
        {
            Siemens[j] = strength[j];
            Amperes[j] = strength[j] * (Volts[j] - emf[j] + LowVolts[j]);
        }

        for (int j = batteriesEnd; j < fixedEnd; j++)
        {
            EvaluateOne(j);
            Siemens[j] = Math.Max(Siemens[j], LeastSiemens);
        }

        for (int j = fixedEnd; j < resistorsEnd; j++)
        {
            Siemens[j] = strength[j];
            Amperes[j] = strength[j] * Volts[j];
        }

        for (int j = resistorsEnd; j < Count; j++)
        {
            double volts = Volts[j];
            if (volts >= referenceVolts[j] && !Locked[j])
            {
                Amperes[j] = strength[j] / volts;
                Siemens[j] = -Amperes[j] / volts;
            }
            else
            {
                EvaluateOne(j);
            }
        }
    }

    /// <summary>Power that batteries give or take at their own voltage.</summary>
    public double BatteryWatts()
    {
        double sum = 0;
        for (int j = ballastsEnd; j < batteriesEnd; j++)
            sum += Math.Abs(emf[j] * Amperes[j]);
        return sum;
    }

    /// <summary>Whether a driver has a voltage, but below its minimum.</summary>
    public bool IsDark(int place) => Volts[place] > 0 && (Locked[place] || Volts[place] < referenceVolts[place]);

    public bool IsLit(int place) => !Locked[place] && Volts[place] >= referenceVolts[place];

    public double MinimumVolts(int place) => referenceVolts[place];

    /// <summary>Current at another voltage, the lock of a driver included.</summary>
    public LawPoint At(int place, double volts)
    {
        if (!Locked[place] || volts <= 0)
            return Laws[place].At(volts);
        double siemens = DarkSiemens(place);
        return new LawPoint(siemens * volts, siemens);
    }

    public double CoContentWatts(int place, double volts) =>
        !Locked[place] || volts <= 0 ? Laws[place].CoContentWatts(volts) : DarkSiemens(place) * volts * volts / 2;

    private double DarkSiemens(int place) => strength[place] / (referenceVolts[place] * referenceVolts[place]);

    private void EvaluateOne(int place)
    {
        LawPoint point = At(place, Volts[place]);
        Amperes[place] = point.CurrentAmperes;
        Siemens[place] = point.SlopeSiemens;
    }

    /// <summary><see cref="FilamentLaw"/> on eight filaments at a time, the power by exponential and logarithm; those
    /// at low voltage one by one from their table.</summary>
    private void EvaluateFilaments()
    {
        Vector512<double> exponent = Vector512.Create(FilamentLaw.CurrentExponent);
        Vector512<double> low = Vector512.Create(FilamentLaw.LowVoltsRatio);
        for (int j = 0; j < filaments; j += s_room)
        {
            Vector512<double> volts = Vector512.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(Volts), (nuint)j);
            Vector512<double> reference = Vector512.LoadUnsafe(
                ref MemoryMarshal.GetArrayDataReference(referenceVolts),
                (nuint)j
            );
            Vector512<double> nominal = Vector512.LoadUnsafe(
                ref MemoryMarshal.GetArrayDataReference(strength),
                (nuint)j
            );
            Vector512<double> size = Vector512.Abs(volts);
            Vector512<double> ratio = size / reference;
            Vector512<double> isLow = Vector512.LessThan(ratio, low);
            if (isLow.AsUInt64() != Vector512<ulong>.AllBitsSet)
            {
                Vector512<double> hot = nominal * VectorPower.Of(ratio, FilamentLaw.CurrentExponent);
                Vector512
                    .CopySign(hot, volts)
                    .StoreUnsafe(ref MemoryMarshal.GetArrayDataReference(Amperes), (nuint)j);
                (exponent * hot / size).StoreUnsafe(ref MemoryMarshal.GetArrayDataReference(Siemens), (nuint)j);
            }

            for (ulong rest = isLow.ExtractMostSignificantBits(); rest != 0; rest &= rest - 1)
            {
                int i = j + BitOperations.TrailingZeroCount(rest);
                if (i >= filaments)
                    break;
                LawPoint point = FilamentLaw.At(Volts[i], referenceVolts[i], strength[i]);
                Amperes[i] = point.CurrentAmperes;
                Siemens[i] = point.SlopeSiemens;
            }
        }
    }

    private int Append(
        EliminationPlan plan,
        Load[] loads,
        int place,
        LampType kind,
        LampType alsoKind,
        bool isBattery = false
    )
    {
        EliminationNumbering numbering = plan.Numbering;
        for (int l = 0; l < plan.LiveLoads.Length; l++)
        {
            int i = plan.LiveLoads[l];
            ref readonly Load load = ref loads[i];
            if (load.Kind != kind && load.Kind != alsoKind || load.IsBattery != isBattery)
                continue;
            placeOfLoad[i] = place;
            Laws[place] = load;
            int feed = numbering.Slot[circuit.LoadFeed[i]];
            int ret = numbering.Slot[circuit.LoadReturn[i]];
            Plus[place] = load.Reversed ? ret : feed;
            Minus[place] = load.Reversed ? feed : ret;
            Entry[place] = numbering.LoadEntry[l];
            referenceVolts[place] = load.Volts;
            emf[place] = load.Emf;
            strength[place] = kind switch
            {
                LampType.Resistor => load.Quantity / load.Strength,
                LampType.LedResistor => load.Strength,
                _ => load.Quantity * load.Strength,
            };
            place++;
        }

        return place;
    }
}
