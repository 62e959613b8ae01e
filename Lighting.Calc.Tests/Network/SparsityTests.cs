namespace Lighting.Calc.Tests.Network;

/// <summary>The order of elimination and the pattern it leaves: what makes a large harness quick to solve.</summary>
public class SparsityTests
{
    // A leaf is eliminated before what it hangs on: no two neighbours are ever left to be joined.
    [Theory]
    [InlineData(2)]
    [InlineData(40)]
    [InlineData(300)]
    public void A_tree_has_no_fill(int vertices)
    {
        var random = new Random(vertices);
        (int A, int B)[] tree = [.. Enumerable.Range(1, vertices - 1).Select(v => (random.Next(v), v))];
        Assert.Equal(vertices - 1, Entries(vertices, tree, last: -1));
        Assert.Equal(vertices - 1, Entries(vertices, tree, last: 0));
    }

    // A hub is left until all but one of its spokes are gone.
    [Fact]
    public void A_star_has_no_fill_wherever_its_hub_stands_in_the_list()
    {
        foreach (int hub in new[] { 0, 20, 40 })
            Assert.Equal(
                40,
                Entries(41, [.. Enumerable.Range(0, 41).Where(v => v != hub).Select(v => (hub, v))], last: -1)
            );
    }

    // Each of the first n − 3 eliminated joins its two neighbours: 2n − 3 entries.
    [Theory]
    [InlineData(3)]
    [InlineData(10)]
    [InlineData(100)]
    public void A_ring_fills_in_one_entry_for_each_vertex_but_three(int vertices) =>
        Assert.Equal(
            2 * vertices - 3,
            Entries(vertices, [.. Enumerable.Range(0, vertices).Select(v => (v, (v + 1) % vertices))], last: -1)
        );

    // A wheel's hub has degree n and goes last but two; the rim fills as a ring does: 2n − 3 for the rim, n for the
    // hub.
    [Fact]
    public void A_wheel_fills_as_its_rim_does()
    {
        const int rim = 30;
        (int, int)[] edges =
        [
            .. Enumerable.Range(1, rim).Select(v => (v, v % rim + 1)),
            .. Enumerable.Range(1, rim).Select(v => (0, v)),
        ];
        Assert.Equal(2 * rim - 3 + rim, Entries(rim + 1, edges, last: -1));
    }

    [Fact]
    public void Repeated_edges_and_loops_change_nothing()
    {
        (int, int)[] ring = [(0, 1), (1, 2), (2, 3), (3, 0)];
        Assert.Equal(Order(4, ring, -1), Order(4, [.. ring, (1, 0), (2, 2), (0, 1)], -1));
        Assert.Equal(Entries(4, ring, -1), Entries(4, [.. ring, (1, 0), (2, 2), (0, 1)], -1));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(6)]
    public void What_shall_be_last_is_last(int last)
    {
        (int, int)[] line = [.. Enumerable.Range(1, 6).Select(v => (v - 1, v))];
        int[] order = Order(7, line, last);
        Assert.Equal(6, order[last]);
        Assert.Equal(Enumerable.Range(0, 7), order.Order());
    }

    [Fact]
    public void Of_equal_degrees_the_first_goes_first() =>
        // 0 and 4 are ends; when 0 is gone 1 is an end too and comes before 4.
        Assert.Equal([0, 1, 2, 3, 4], Order(5, [(0, 1), (1, 2), (2, 3), (3, 4)], -1));

    [Fact]
    public void A_pattern_holds_each_entry_once_by_columns_with_its_fill()
    {
        // 0 joins 1 and 3, so eliminating it fills 1–3; ground is 4.
        FactorPattern pattern = Pattern(4, [(0, 1), (3, 0), (1, 2), (2, 1), (2, 2), (3, 4)]);
        Assert.Equal([0, 2, 4, 5, 5], pattern.ColumnStart);
        Assert.Equal([1, 3, 2, 3, 3], pattern.Rows.Take(pattern.EntryCount));
        Assert.Equal(5, pattern.EntryCount);
        Assert.Equal([pattern.EntryOf(1, 3), pattern.EntryOf(2, 3)], pattern.Targets);
        Assert.Equal((3, 3), (pattern.EntryOf(1, 3), pattern.EntryOf(3, 1)));
        // Then the places of 0 to 3 with ground, and one of ground with itself.
        Assert.Equal((5, 8), (pattern.EntryOf(0, 4), pattern.EntryOf(4, 3)));
        Assert.Equal((9, 10), (pattern.EntryOf(4, 4), pattern.PlaceCount));
        Assert.Equal(
            "The pattern lacks an entry.",
            Assert.Throws<InvalidOperationException>(() => pattern.EntryOf(0, 2)).Message
        );
    }

    [Fact]
    public void A_set_goes_by_its_lowest_number_whatever_the_order_of_joining()
    {
        var sets = new DisjointSets(6);
        sets.Join(5, 3);
        sets.Join(1, 5);
        Assert.Equal([0, 1, 2, 1, 4, 1], sets.Roots());
        int[] kept = sets.Roots();
        sets.Join(4, 0);
        sets.Join(4, 3);
        Assert.Equal([0, 0, 2, 0, 0, 0], sets.Roots());
        sets.Restore(kept);
        Assert.Equal([0, 1, 2, 1, 4, 1], sets.Roots());
        Assert.Equal((1, 4), (sets.RootOf(5), sets.RootOf(4)));
    }

    private static int Entries(int vertices, (int A, int B)[] edges, int last)
    {
        int[] position = Order(vertices, edges, last);
        return Pattern(vertices, [.. edges.Select(e => (position[e.A], position[e.B]))]).EntryCount;
    }

    private static FactorPattern Pattern(int size, (int A, int B)[] edges) =>
        FactorPattern.Of(size, [.. edges.Select(e => e.A)], [.. edges.Select(e => e.B)]);

    private static int[] Order(int vertices, (int A, int B)[] edges, int last) =>
        new EliminationOrder(vertices, edges, last).Position;
}
