package puzzleworkshop.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import puzzleworkshop.delivery.boxes.Box;
import puzzleworkshop.delivery.boxes.Boxes;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.measure.Length;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.PlainBoxes;
import puzzleworkshop.workshop.Workshop;

/** Ways of sending and boxes are kept in memory: whoever looks after a change sees it, whoever looked while it was made or not. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class KeptWhileComputingIT {

    private static final int ROUNDS = 200;

    @Autowired
    SendingWays ways;

    @Autowired
    WorkingTimes times;

    @Autowired
    Boxes boxes;

    @Autowired
    Supplies supplies;

    @Autowired
    Workshop workshop;

    @Autowired
    PlatformTransactionManager transactions;

    @Test
    void in_200_rounds_no_way_of_sending_is_older_than_its_last_save() throws Exception {
        assertThat(stale(ways::all, round -> {
                    SendingWay usual = ways.all().getFirst();
                    ways.save(keeping(usual, 1 + round));
                    return () -> ways.all().getFirst().keepsDays() == 1 + round;
                }))
                .as("ways older than the last save")
                .isZero();
    }

    @Test
    void in_200_rounds_no_way_is_older_than_its_last_hours() throws Exception {
        assertThat(stale(ways::all, round -> {
                    DeliveryWay usual = times.usualWay();
                    int days = 1 + round % 9;
                    times.save(new DeliveryWay(
                            usual.id(), usual.name(), usual.leavesOn(), usual.cutOff(), days, usual.arrivesOn()));
                    return () -> times.usualWay().daysOnTheWay() == days
                            && ways.all().getFirst().way().daysOnTheWay() == days;
                }))
                .as("ways older than their last hours")
                .isZero();
    }

    @Test
    void in_200_rounds_no_box_is_older_than_its_last_save() throws Exception {
        SupplyItem item = box();
        assertThat(stale(boxes::all, round -> {
                    boxes.save(inside(item, 50 + round));
                    return () -> boxes.all().getLast().emptyGrams() == 50 + round;
                }))
                .as("boxes older than the last save")
                .isZero();
    }

    @Test
    void who_changes_a_way_sees_it_at_once_and_nobody_ever_what_was_rolled_back() {
        SendingWay before = ways.all().getFirst();
        int other = before.keepsDays() % 100 + 3;
        new TransactionTemplate(transactions).executeWithoutResult(status -> {
            ways.save(keeping(before, other));
            assertThat(ways.all().getFirst().keepsDays()).isEqualTo(other);
            status.setRollbackOnly();
        });
        assertThat(ways.all().getFirst()).isEqualTo(before);
    }

    /** Changes in a round, and answers whether the change is seen. */
    @FunctionalInterface
    private interface Changing {
        BooleanSupplier in(int round);
    }

    /** In how many rounds the change was not seen right after it, with two who look all the time. */
    private static int stale(Runnable looking, Changing changing) throws Exception {
        int stale = 0;
        AtomicBoolean stop = new AtomicBoolean();
        try (ExecutorService readers = Executors.newFixedThreadPool(2)) {
            List<? extends Future<?>> reading =
                    List.of(readers.submit(() -> look(looking, stop)), readers.submit(() -> look(looking, stop)));
            try {
                for (int round = 0; round < ROUNDS; round++) {
                    stale += changing.in(round).getAsBoolean() ? 0 : 1;
                }
            } finally {
                stop.set(true);
            }
            for (Future<?> each : reading) {
                each.get();
            }
        }
        return stale;
    }

    private static void look(Runnable looking, AtomicBoolean stop) {
        while (!stop.get()) {
            looking.run();
            Thread.yield();
        }
    }

    private static SendingWay keeping(SendingWay way, int days) {
        return new SendingWay(
                way.way(),
                way.kind(),
                way.limits(),
                way.divisor(),
                way.linkPattern(),
                way.collectWindow(),
                days,
                way.prices(),
                way.reach());
    }

    private static Box inside(SupplyItem item, double grams) {
        return Box.of(item, Length.mm(300), Length.mm(200), Length.mm(60), Length.mm(1.5), grams, Optional.empty());
    }

    private SupplyItem box() {
        return supplies.keep(PlainBoxes.named("box for looking", workshop.currency()));
    }
}
