package puzzleworkshop.boards;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.boards.BlankPlan.Part;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.sheets.Cut;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.support.DatabaseTest;

/**
 * Every pair of board commands at the same moment, on orders that share sheets: neither ends in a lock failure (PostgreSQL
 * reports a deadlock after a second), each succeeds or is refused with a sentence, and what is written afterwards is whole.
 */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class BoardLockPairsIT {

    private static final Placement CORNER = new Placement(0, 0, 0);

    @Autowired
    OrderBoards boards;

    @Autowired
    BoardCuts cuts;

    @Autowired
    BlanksWaiting blanks;

    @Autowired
    Orders orders;

    @Autowired
    SheetRack rack;

    @Autowired
    SheetFinder finder;

    @Autowired
    RackSettings settings;

    @Autowired
    JdbcClient jdbc;

    private BoardOrders made;
    private long offer;

    @BeforeEach
    void a_board_that_can_be_bought() {
        made = new BoardOrders(jdbc, rack);
        settings.save(new BoardOffer(
                0,
                "birch 500 × 400, " + System.nanoTime(),
                "birch-ply",
                Grade.CRAFT,
                Length.mm(3),
                Size.mm(500, 400),
                Grain.NONE,
                Money.of("6.40", "EUR"),
                true));
        offer = settings.offers().stream().mapToLong(BoardOffer::id).max().orElseThrow();
    }

    /** A command that may be refused. */
    private interface Command {
        void run();
    }

    /**
     * Ada holds two sheets, and Ben and Cleo follow on the first; Ben holds one too and waits for a board to come; a cut
     * for Ben has given Cleo its offcut. One sheet is free, and Dora has chosen it.
     */
    private final class Scene {

        final SheetId shared = made.sheet(600, 400);
        final SheetId second = made.sheet(400, 300);
        final SheetId bens = made.sheet(400, 300);
        final SheetId cutForBen = made.sheet(600, 400);
        final SheetId free = made.sheet(400, 300);
        final OrderId dora = made.confirmed(free);
        final OrderId cleo = made.confirmed(shared, cutForBen, free);
        final OrderId ben = made.confirmed(bens, cutForBen, shared, shared);
        final OrderId ada = made.confirmed(shared, second);
        final Cut cut;

        Scene() {
            boards.hold(ada, "test");
            boards.choose(ben, 1, bens, CORNER, "test");
            boards.choose(ben, 2, cutForBen, CORNER, "test");
            boards.follow(new OrderBoards.Place(cleo, 2, cutForBen, new Placement(300, 200, 0)), "test");
            cut = cuts.cut(cutForBen, kept(cutForBen), "", "test");
            boards.follow(new OrderBoards.Place(ben, 3, shared, new Placement(300, 200, 0)), "test");
            boards.follow(new OrderBoards.Place(cleo, 1, shared, new Placement(0, 200, 0)), "test");
            jdbc.sql("update order_blank set sheet_id = null, offer_id = :offer where order_id = :ben and position = 4")
                    .param("offer", offer)
                    .param("ben", ben.value())
                    .update();
        }

        private List<puzzleworkshop.geometry.Outline> kept(SheetId sheet) {
            return cuts.proposal(sheet).parts().stream()
                    .filter(part -> !part.isScrap())
                    .map(puzzleworkshop.geometry.fit.Remainder.Part::outline)
                    .toList();
        }

        Map<String, Command> commands() {
            Map<String, Command> all = new LinkedHashMap<>();
            all.put("choose a free sheet for Ada", () -> boards.choose(ada, 1, free, CORNER, "test"));
            all.put("choose the same for Ben, who follows", () -> boards.choose(ben, 3, free, CORNER, "test"));
            all.put("choose the same for Ben, who holds", () -> boards.choose(ben, 1, free, CORNER, "test"));
            all.put("hold what Dora chose", () -> boards.hold(dora, "test"));
            all.put(
                    "hold it for Cleo, Ben following",
                    () -> boards.holdWithFollowers(
                            new OrderBoards.Place(cleo, 3, free, CORNER),
                            List.of(new OrderBoards.Place(ben, 3, free, new Placement(0, 173, 0))),
                            "test"));
            all.put(
                    "follow for Cleo",
                    () -> boards.follow(new OrderBoards.Place(cleo, 3, shared, new Placement(300, 0, 0)), "test"));
            all.put(
                    "Ben follows no more",
                    () -> blanks.following().stream()
                            .filter(blank -> blank.order().id().equals(ben))
                            .forEach(blank -> boards.unfollow(blank, "test")));
            all.put("cut all for Ada", () -> cuts.cut(ada, Instant.EPOCH, "test"));
            all.put("cut the shared sheet on its page", () -> cuts.cut(shared, kept(shared), "", "test"));
            all.put("set the shared sheet free", () -> boards.release(shared, "test"));
            all.put("set Ben's sheet free", () -> boards.release(bens, "test"));
            all.put("take Ben's cut back", () -> cuts.undo(cut.id(), "test"));
            all.put("Ben's board comes", () -> boards.arrive(ben, 4, "A1", "test"));
            all.put("Ada's boards are spoiled", () -> cuts.spoil(ada, "charred", "test"));
            all.put("Ada's boards are planned again", () -> boards.replace(ada, planOnFree(), "test"));
            all.put("Ada gives up", () -> orders.cancel(ada, "", "test"));
            all.put("Ben gives up", () -> orders.cancel(ben, "", "test"));
            all.put("Cleo gives up", () -> orders.cancel(cleo, "", "test"));
            return all;
        }

        private BlankPlan planOnFree() {
            BlankWish wish = BlankWish.of(BoardOrders.BLANK, Length.mm(3));
            return new BlankPlan(
                    List.of(new BlankPlan.Block(
                            Part.PUZZLE, 1, 1, BoardOrders.BLANK, finder.at(free, wish, CORNER), Optional.empty())),
                    0);
        }
    }

    @Test
    void of_every_pair_of_commands_at_once_none_fails_on_a_lock_and_what_is_written_is_whole() throws Exception {
        List<String> names = List.copyOf(new Scene().commands().keySet());
        int succeeded = 0;
        List<String> failed = new ArrayList<>();
        try (ExecutorService people = Executors.newFixedThreadPool(2)) {
            for (int one = 0; one < names.size(); one++) {
                for (int other = one; other < names.size(); other++) {
                    Map<String, Command> commands = new Scene().commands();
                    String pair = names.get(one) + " | " + names.get(other);
                    CyclicBarrier start = new CyclicBarrier(2);
                    Future<Boolean> first = people.submit(() -> succeeds(start, commands, pair.split(" \\| ")[0]));
                    Future<Boolean> second = people.submit(() -> succeeds(start, commands, pair.split(" \\| ")[1]));
                    for (Future<Boolean> answer : List.of(first, second)) {
                        try {
                            succeeded += answer.get() ? 1 : 0;
                        } catch (java.util.concurrent.ExecutionException broken) {
                            failed.add(pair + ": " + broken.getCause());
                        }
                    }
                    wrong().forEach(line -> failed.add(pair + ": " + line));
                }
            }
        }
        assertThat(failed).isEmpty();
        // Most commands can be done side by side; were they all refused, this would prove nothing.
        assertThat(succeeded).isGreaterThan(names.size() * names.size() / 2);
    }

    private static boolean succeeds(CyclicBarrier start, Map<String, Command> commands, String name) throws Exception {
        Command command = commands.get(name);
        start.await();
        try {
            command.run();
            return true;
        } catch (Refused refused) {
            return false;
        }
    }

    /** What must never be: each line names what is wrong and where. */
    private List<String> wrong() {
        return jdbc.sql("""
            select 'held for an order that is given up: sheet ' || r.sheet_id from sheet_reservation r
            join customer_order o on o.id = r.order_id where r.ended_at is null and o.state = 'CANCELLED'
            union all
            select 'state against holds: sheet ' || s.id || ' ' || s.state from sheet s
            where (s.state = 'RESERVED') <> exists (
                select from sheet_reservation r where r.sheet_id = s.id and r.ended_at is null)
            union all
            select 'state against cuts: sheet ' || s.id || ' ' || s.state from sheet s
            where (s.state = 'USED') <> exists (
                select from sheet_cut c where c.sheet_id = s.id and c.undone_at is null)
            union all
            select 'follows on a sheet nobody holds: ' || f.sheet_id from sheet_follow f join sheet s on s.id = f.sheet_id
            where f.ended_at is null and s.state <> 'RESERVED'
            union all
            select 'follows for an order that is given up: ' || f.order_id from sheet_follow f
            join customer_order o on o.id = f.order_id where f.ended_at is null and o.state <> 'CONFIRMED'
            union all
            select 'held without a blank: sheet ' || r.sheet_id from sheet_reservation r
            where r.ended_at is null and not exists (
                select from order_blank b where b.order_id = r.order_id and b.sheet_id = r.sheet_id)
            """).query(String.class).list();
    }
}
