namespace Lighting.Calc.Tests.Network;

/// <summary>Which closed contacts may carry current, against taking dead ends off one by one.</summary>
public class CarryingContactsTests
{
    // plus 1 – contact – 2 – contact – 3 – load – minus 0, and two contacts from 2 that end at 5.
    [Theory]
    [InlineData("1111", "1100")]
    [InlineData("1011", "0000")]
    [InlineData("0111", "0000")]
    [InlineData("1100", "1100")]
    [InlineData("0000", "0000")]
    public void A_contact_is_kept_when_a_way_leads_on_from_both_of_its_ends(string closed, string kept) =>
        Assert.Equal(kept, Text(Kept(6, [(1, 2), (2, 3), (2, 4), (4, 5)], [], [(3, 0)], closed)));

    [Fact]
    public void Points_that_a_run_joins_are_one_and_a_contact_between_them_is_kept() =>
        Assert.Equal("11", Text(Kept(3, [(1, 2), (2, 0)], [(1, 2)], [(2, 0)], "11")));

    [Fact]
    public void Contacts_from_the_source_alone_lead_nowhere_and_the_source_itself_is_never_taken_off() =>
        Assert.Equal("00", Text(Kept(4, [(1, 2), (2, 3)], [], [], "11")));

    // A chain of 600 contacts is kept as a whole or not at all.
    [Fact]
    public void A_long_chain_is_followed_to_its_end()
    {
        (int, int)[] chain = [.. Enumerable.Range(1, 600).Select(v => (v, v + 1))];
        Assert.Equal(new string('1', 600), Text(Kept(602, chain, [], [(601, 0)], new string('1', 600))));
        Assert.Equal(new string('0', 600), Text(Kept(602, chain, [], [], new string('1', 600))));
        Assert.Equal(new string('0', 600), Text(Kept(602, chain, [], [(601, 0)], new string('1', 599) + "0")));
        Assert.Equal(new string('0', 600), Text(Kept(602, [.. chain.Reverse()], [], [], new string('1', 600))));
    }

    [Fact]
    public void It_is_the_same_as_taking_dead_ends_off_one_by_one()
    {
        var random = new Random(11);
        int dropped = 0;
        for (int n = 0; n < 500; n++)
        {
            int nodes = 3 + random.Next(10);
            (int, int)[] Pairs(int count) =>
                [.. Enumerable.Range(0, count).Select(_ => (random.Next(nodes), random.Next(nodes)))];
            (int, int)[] contacts = Pairs(random.Next(2 * nodes)),
                runs = Pairs(random.Next(nodes / 2)),
                loads = Pairs(random.Next(4));
            string closed = new([.. contacts.Select(_ => random.Next(4) > 0 ? '1' : '0')]);
            string expected = OneByOne(nodes, contacts, runs, loads, closed);
            Assert.Equal(expected, Text(Kept(nodes, contacts, runs, loads, closed)));
            dropped += closed.Count(c => c == '1') - expected.Count(c => c == '1');
        }

        Assert.True(dropped > 500);
    }

    private static bool[] Kept(
        int nodes,
        (int A, int B)[] contacts,
        (int A, int B)[] runs,
        (int A, int B)[] loads,
        string closed
    )
    {
        string[] points =
        [
            Bike.BatteryMinus,
            Bike.BatteryPlus,
            .. Enumerable.Range(2, nodes).Select(n => $"point {n}"),
        ];
        var graph = new HarnessGraph(
            new Bike
            {
                // A wire that lies apart makes it a bike with runs.
                Runs =
                [
                    .. runs.Append((nodes, nodes + 1))
                        .Select((r, i) => Benches.Run($"run {i}", points[r.Item1], points[r.Item2], 1)),
                ],
                Switches = [.. contacts.Select(c => Benches.Contact("switch", points[c.A], points[c.B], "on"))],
                Lamps =
                [
                    .. loads.Select(
                        (l, i) => Benches.Lamp($"lamp {i}", points[l.A], points[l.B], Benches.Filament(12, 5))
                    ),
                ],
            }
        );
        ContactSet kept = graph.Carrying.Of(ContactSet.Where(contacts.Length, c => closed[c] == '1'));
        return [.. contacts.Select((_, c) => kept.Has(c))];
    }

    private static string OneByOne(
        int nodes,
        (int A, int B)[] contacts,
        (int A, int B)[] runs,
        (int A, int B)[] loads,
        string closed
    )
    {
        int[] island = [.. Enumerable.Range(0, nodes)];
        foreach ((int a, int b) in runs)
            island = [.. island.Select(i => i == island[a] ? island[b] : i)];
        // Index −1 is a load, −2 the source.
        List<(int A, int B, int Index)> parts =
        [
            (island[1], island[0], -2),
            .. loads.Select(l => (island[l.A], island[l.B], -1)),
        ];
        for (int c = 0; c < contacts.Length; c++)
            if (closed[c] == '1')
                parts.Add((island[contacts[c].A], island[contacts[c].B], c));
        List<(int A, int B, int Index)> loops = [.. parts.Where(p => p.A == p.B)];
        parts.RemoveAll(p => p.A == p.B);
        while (parts.FindIndex(p => p.Index != -2 && (Alone(p.A) || Alone(p.B))) is >= 0 and int at)
            parts.RemoveAt(at);
        HashSet<int> kept = [.. parts.Concat(loops).Select(p => p.Index)];
        return new string([.. Enumerable.Range(0, contacts.Length).Select(c => kept.Contains(c) ? '1' : '0')]);

        bool Alone(int point) => parts.Count(p => p.A == point || p.B == point) == 1;
    }

    private static string Text(bool[] kept) => new([.. kept.Select(k => k ? '1' : '0')]);
}
