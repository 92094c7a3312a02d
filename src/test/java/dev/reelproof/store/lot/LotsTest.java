package dev.reelproof.store.lot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.app.lot.RegisterForTests;
import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.ReelBelow;
import dev.reelproof.store.DatabaseOwner;
import dev.reelproof.store.SearchTooLargeException;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.TestTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;

@QuarkusTest
class LotsTest {
    private static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-02-11T09:00:00Z");

    @Inject
    Lots lots;

    @Inject
    RegisterForTests registration;

    @Inject
    DataSource database;

    private final String own = "-" + UUID.randomUUID().toString().substring(0, 8);

    @Test
    void keepsWhatItHas() throws SQLException {
        register(lot("A"));
        register(lot("B", input("A", 1)));
        for (String change : List.of(
                "update lot set machine = 'x' where id = 'A" + own + "'",
                "delete from lot_input where child = 'B" + own + "'",
                "update lot_input set quantity_value = 2 where child = 'B" + own + "'",
                "delete from lot where id = 'B" + own + "'",
                "truncate lot, lot_input, lot_sample, implausible_link")) {
            try (Connection connection = DatabaseOwner.connect();
                    Statement statement = connection.createStatement()) {
                SQLException refusal = assertThrows(SQLException.class, () -> statement.execute(change), change);
                assertTrue(refusal.getMessage().contains("is a record"), refusal.getMessage());
            }
        }
        assertEquals(
                List.of(input("A", 1)),
                lots.byId("north", id("B")).orElseThrow().lot().inputs());
    }

    @Test
    void givesUpASearchThatTakesTooLong() throws SQLException {
        register(lot("A"));
        try (Connection connection = DatabaseOwner.connect();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute("lock table lot_input in access exclusive mode");
            String message = assertThrows(SearchTooLargeException.class, () -> lots.descendants("north", id("A")))
                    .getMessage();
            assertTrue(message.contains("was not found within 5s"), message);
            connection.rollback();
        }
        assertEquals(
                1,
                assertInstanceOf(
                                Lots.Descendants.InOrder.class,
                                lots.descendants("north", id("A")).orElseThrow())
                        .pedigree()
                        .lots()
                        .size());
    }

    @Test
    @TestTransaction
    void refusesAncestorsBeyondWhatOneAnswerHolds() throws SQLException {
        register(reel("R"));
        insertLots(Lots.MOST_LOTS, "'R%1$s'", "'N' || n || '%1$s'");
        String message = assertThrows(SearchTooLargeException.class, () -> lots.ancestorsOfReel("north", id("R")))
                .getMessage();
        assertTrue(message.contains("more than 100000 lots"), message);
    }

    @Test
    @TestTransaction
    void streamsDescendantsHoweverMany() throws SQLException {
        register(lot("A"));
        insertLots(Lots.MOST_IN_ORDER - 1, "'N' || n || '%1$s'", "'A%1$s'");
        assertInstanceOf(
                Lots.Descendants.InOrder.class,
                lots.descendants("north", id("A")).orElseThrow());
        register(reel("R", input("N1", 0.5)));
        assertInstanceOf(
                Lots.Descendants.Many.class, lots.descendants("north", id("A")).orElseThrow());
        Map<LotId, Integer> depths = new HashMap<>();
        List<Pedigree.Link> links = new ArrayList<>();
        List<ReelBelow> reels = new ArrayList<>();
        lots.stream(
                "north",
                id("A"),
                entry -> assertNull(depths.put(entry.lot().id(), entry.depth())),
                links::add,
                reels::add);
        assertEquals(Lots.MOST_IN_ORDER + 1, depths.size());
        assertEquals(Lots.MOST_IN_ORDER, links.size());
        assertEquals(List.of(new ReelBelow(id("R"), null, null, null)), reels);
        assertEquals(0, depths.get(id("A")));
        assertEquals(1, depths.get(id("N2")));
        assertEquals(2, depths.get(id("R")));
    }

    /** The depths that the database counts along are those of the breadth-first search in the core. */
    @Test
    @TestTransaction
    void countsDepthsAsTheCoreDoes() {
        long seed = 20260211;
        Random random = new Random(seed);
        int count = 120;
        for (int n = 0; n < count; n++) {
            Set<Integer> parents = new TreeSet<>();
            for (int i = 0; i < Math.min(n, 3); i++) {
                parents.add(random.nextInt(Math.max(0, n - 20), n));
            }
            register(lot("D" + n, parents.stream().map(p -> input("D" + p, 1)).toArray(LotInput[]::new)));
        }
        for (int start : new int[] {0, 1, 17, 60}) {
            List<Pedigree.Entry> streamed = new ArrayList<>();
            lots.stream("north", id("D" + start), streamed::add, link -> {}, reel -> {});
            Pedigree pedigree = assertInstanceOf(
                            Lots.Descendants.InOrder.class,
                            lots.descendants("north", id("D" + start)).orElseThrow())
                    .pedigree();
            assertTrue(pedigree.lots().size() > 10, "seed " + seed);
            assertEquals(
                    pedigree.lots(),
                    streamed.stream()
                            .sorted(Comparator.comparingInt(Pedigree.Entry::depth)
                                    .thenComparing(entry -> entry.lot().id()))
                            .toList(),
                    "seed " + seed);
        }
    }

    @Test
    @TestTransaction
    void endsWhereLotsRunInACircle() throws SQLException {
        register(reel("R"));
        insertLots(1, "'R%1$s'", "'N1%1$s'");
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute(
                    "insert into lot_input select 'north', 'N1%1$s', 'R%1$s', 0, 1, 'g', 0.001".formatted(own));
        }
        Pedigree up = lots.ancestorsOfReel("north", id("R")).orElseThrow();
        assertEquals(
                List.of(0, 1), up.lots().stream().map(Pedigree.Entry::depth).toList());
        assertEquals(2, up.links().size());
    }

    /** Statistics of a time at which one parent has almost all children let every look-up seem worth reading the whole table. */
    @Test
    void looksEachLotUpInItsIndexWhateverTheStatisticsSay() throws SQLException {
        register(lot("A"));
        insertLots(2_000, "'N' || n || '%1$s'", "'A%1$s'");
        register(reel("R", input("N1", 0.5)));
        change(
                "alter table lot_input alter column parent set (n_distinct = 1), alter column child set (n_distinct = 1)");
        change("analyze lot_input");
        try {
            assertEquals(
                    0,
                    wholeReadings(
                            "lot_input",
                            () -> assertEquals(
                                    3,
                                    lots.ancestorsOfReel("north", id("R"))
                                            .orElseThrow()
                                            .lots()
                                            .size())),
                    "for the ancestors");
            AtomicInteger found = new AtomicInteger();
            assertEquals(
                    0,
                    wholeReadings(
                            "lot_input",
                            () -> lots.stream(
                                    "north", id("A"), entry -> found.incrementAndGet(), link -> {}, reel -> {})),
                    "for the descendants");
            assertEquals(2_002, found.get());
        } finally {
            change(
                    "alter table lot_input alter column parent reset (n_distinct), alter column child reset (n_distinct)");
            change("analyze lot_input");
        }
    }

    private static void change(String statement) throws SQLException {
        try (Connection connection = DatabaseOwner.connect();
                Statement change = connection.createStatement()) {
            change.execute(statement);
        }
    }

    /** How often a search reads all of a table. */
    private int wholeReadings(String table, Runnable search) {
        return QuarkusTransaction.requiringNew().call(() -> {
            int before = wholeReadings(table);
            search.run();
            return wholeReadings(table) - before;
        });
    }

    private int wholeReadings(String table) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet count = statement.executeQuery(
                        "select seq_scan from pg_stat_xact_user_tables where relname = '" + table + "'")) {
            assertTrue(count.next());
            return count.getInt(1);
        }
    }

    /** Writes units N1, N2 … and a link for each, past the checks. */
    private void insertLots(int count, String child, String parent) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute(
                    """
                    insert into lot select 'north', 'N' || n || '%1$s', 'unit', 1, 'm', '%3$s', null, null, '', now()
                    from generate_series(1, %2$d) n"""
                            .formatted(own, count, MORNING));
            statement.execute(
                    "insert into lot_input select 'north', %s, %s, 0, 1, 'g', 0.001 from generate_series(1, %d) n"
                            .formatted(child.formatted(own), parent.formatted(own), count));
        }
    }

    private void register(Lot lot) {
        registration.register(lot);
    }

    private LotId id(String name) {
        return new LotId(name + own);
    }

    private LotInput input(String parent, double metres) {
        return new LotInput(id(parent), new Amount(metres, "m"));
    }

    private Lot reel(String name, LotInput... inputs) {
        return new Lot(id(name), "north", LotKind.REEL, new Amount(1, "km"), MORNING, null, null, List.of(inputs));
    }

    private Lot lot(String name, LotInput... inputs) {
        return new Lot(id(name), "north", LotKind.UNIT, new Amount(1, "km"), MORNING, null, null, List.of(inputs));
    }
}
