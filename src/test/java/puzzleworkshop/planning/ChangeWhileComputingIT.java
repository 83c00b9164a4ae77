package puzzleworkshop.planning;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.Seeds;
import puzzleworkshop.workshop.Workshop;
import puzzleworkshop.workshop.WorkshopProfile;

/** Somebody looks while somebody else changes: whoever looks after the change sees it. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class ChangeWhileComputingIT {

    @Autowired
    WeekPlan plan;

    @Autowired
    WorkingTimes times;

    @Autowired
    Workshop workshop;

    @Autowired
    Orders orders;

    @Autowired
    BeanFactory beans;

    private final long seed = Seeds.from(20261130);
    private final Random random = new Random(seed);

    @Test
    void in_200_rounds_no_plan_is_older_than_the_last_change() throws Exception {
        for (int i = 0; i < 4; i++) {
            new BenchOrders(beans).confirmed("Tom Reed", plan.today().plusDays(20 + i), 10);
        }
        LocalDate first = plan.today().plusDays(400);
        int stale = 0;
        try (ExecutorService reader = Executors.newSingleThreadExecutor()) {
            for (int round = 0; round < 200; round++) {
                LocalDate day = first.plusDays(round);
                Future<?> early = reader.submit(() -> plan.now());
                pause(random.nextInt(30));
                times.free(Optional.empty(), day, "round " + round);
                early.get();
                stale += plan.now().calendar().free().closed().contains(day) ? 0 : 1;
            }
        }
        assertThat(stale).as("plans without the last change, seed %d", seed).isZero();
    }

    @Test
    void an_order_confirmed_while_the_plan_is_made_is_in_the_next_one() throws Exception {
        BenchOrders make = new BenchOrders(beans);
        List<String> missing = new ArrayList<>();
        try (ExecutorService reader = Executors.newSingleThreadExecutor()) {
            for (int round = 0; round < 12; round++) {
                AtomicBoolean stop = new AtomicBoolean();
                Future<?> early = reader.submit(() -> {
                    while (!stop.get()) {
                        plan.now();
                        pause(2);
                    }
                });
                Order order;
                try {
                    order = make.confirmed("Ida Lund", plan.today().plusDays(30), 10);
                } finally {
                    stop.set(true);
                }
                early.get();
                if (plan.now().of(order.id()).isEmpty()) {
                    missing.add(order.number());
                }
            }
        }
        assertThat(missing).as("orders confirmed that the plan does not know").isEmpty();
    }

    @Test
    void five_who_look_after_one_change_make_one_plan() throws Exception {
        Order order = new BenchOrders(beans).confirmed("Ida Lund", plan.today().plusDays(30), 10);
        plan.now();
        orders.note(order.id(), Sentence.of("orders.history.changed"), "Robin");
        CountDownLatch all = new CountDownLatch(5);
        List<Future<WeekPlan.Standing>> looked = new ArrayList<>();
        try (ExecutorService people = Executors.newFixedThreadPool(5)) {
            for (int i = 0; i < 5; i++) {
                looked.add(people.submit(() -> {
                    all.countDown();
                    all.await();
                    return plan.now();
                }));
            }
        }
        Set<Integer> plans = new HashSet<>();
        for (Future<WeekPlan.Standing> standing : looked) {
            plans.add(System.identityHashCode(standing.get()));
        }
        assertThat(plans).hasSize(1);
    }

    @Test
    void in_200_rounds_the_profile_is_never_older_than_the_last_save() throws Exception {
        WorkshopProfile old = workshop.profile();
        int stale = 0;
        try (ExecutorService readers = Executors.newFixedThreadPool(2)) {
            for (int round = 0; round < 200; round++) {
                AtomicBoolean stop = new AtomicBoolean();
                List<Future<?>> reading = new ArrayList<>();
                for (int i = 0; i < 2; i++) {
                    reading.add(readers.submit(() -> {
                        while (!stop.get()) {
                            workshop.profile();
                            pause(0);
                        }
                    }));
                }
                String name = "Workshop of round " + round;
                workshop.save(WorkshopProfile.named(name, old.currency(), old.units(), old.zone()));
                stale += workshop.profile().name().equals(name) ? 0 : 1;
                stop.set(true);
                for (Future<?> each : reading) {
                    each.get();
                }
            }
        }
        assertThat(stale).as("profiles older than the last save").isZero();
    }

    private static void pause(int millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
