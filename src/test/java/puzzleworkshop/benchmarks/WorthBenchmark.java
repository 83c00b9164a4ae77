package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.util.FileSystemUtils;
import puzzleworkshop.PuzzleWorkshop;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.OutlineText;
import puzzleworkshop.geometry.RandomOutlines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.RemainderWorth;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.support.PlainOrders;

/**
 * The first answer for a blank after a change of a rack of 3,000 sheets, with half a year of orders to learn from: asked at once,
 * and two seconds later, when worths were prepared meanwhile.
 */
final class WorthBenchmark implements Benchmark {

    private static final int SHEETS = 3_000;
    private static final int ORDERS = 400;
    private static final int WEEKS = 26;
    private static final int ROUNDS = 20;
    private static final int[][] BLANKS = {{170, 127}, {232, 170}, {222, 222}, {319, 232}, {372, 272}, {442, 319}};
    private static final BlankWish WISH = BlankWish.of(Size.mm(319, 232), Length.mm(3));

    @Override
    public String run(Optional<Path> folder, PrintStream out) throws Exception {
        Path data = Files.createTempDirectory("puzzle-workshop-worth");
        try (ConfigurableApplicationContext program = new SpringApplicationBuilder(PuzzleWorkshop.class)
                .run("--server.port=0", "--puzzleworkshop.data=" + data)) {
            OpenWorkshop.in(program);
            fill(program);
            if (program.getBean(RemainderWorth.class).ladder(List.of(WISH)).isEmpty()) {
                throw new IllegalStateException("Nothing was learned");
            }
            rounds(program, 0, 3);
            double[] atOnce = rounds(program, 0, ROUNDS);
            double[] prepared = rounds(program, 2_000, ROUNDS);
            double[] again = again(program.getBean(SheetFinder.class));
            out.printf("asked at once:      median %.0f ms, worst %.0f ms%n", atOnce[ROUNDS / 2], atOnce[ROUNDS - 1]);
            out.printf(
                    "asked 2 s later:    median %.0f ms, worst %.0f ms%n", prepared[ROUNDS / 2], prepared[ROUNDS - 1]);
            out.printf("asked once more:    median %.0f ms, worst %.0f ms%n", again[ROUNDS / 2], again[ROUNDS - 1]);
            return String.format(
                    Locale.ROOT,
                    "sheets=%d orders=%d changes=%d at_once_p50_ms=%.0f at_once_max_ms=%.0f first_p50_ms=%.0f first_max_ms=%.0f"
                            + " again_p50_ms=%.0f",
                    SHEETS,
                    ORDERS,
                    ROUNDS,
                    atOnce[ROUNDS / 2],
                    atOnce[ROUNDS - 1],
                    prepared[ROUNDS / 2],
                    prepared[ROUNDS - 1],
                    again[ROUNDS / 2]);
        } finally {
            FileSystemUtils.deleteRecursively(data);
        }
    }

    /** Nothing has changed since. */
    private static double[] again(SheetFinder finder) {
        double[] taken = new double[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            long begin = System.nanoTime();
            finder.suggest(WISH, 1);
            taken[round] = (System.nanoTime() - begin) / 1e6;
        }
        Arrays.sort(taken);
        return taken;
    }

    private static double[] rounds(ConfigurableApplicationContext program, int waitMillis, int rounds)
            throws InterruptedException {
        SheetRack rack = program.getBean(SheetRack.class);
        SheetFinder finder = program.getBean(SheetFinder.class);
        double[] taken = new double[rounds];
        for (int round = 0; round < rounds; round++) {
            rack.add(
                    Outline.rectangle(Size.mm(330 + round, 240 + round)),
                    BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                    Money.of("1.00", "EUR"),
                    "Robin");
            Thread.sleep(waitMillis);
            long begin = System.nanoTime();
            if (finder.suggest(WISH, 1).isEmpty()) {
                throw new IllegalStateException("No sheet was found");
            }
            taken[round] = (System.nanoTime() - begin) / 1e6;
        }
        Arrays.sort(taken);
        return taken;
    }

    private static void fill(ConfigurableApplicationContext program) {
        JdbcClient jdbc = program.getBean(JdbcClient.class);
        program.getBean(RackSettings.class)
                .save(new BoardOffer(
                        0,
                        "birch ply 800 × 600",
                        "birch-ply",
                        Grade.CRAFT,
                        Length.mm(3),
                        Size.mm(800, 600),
                        Grain.NONE,
                        Money.of(new BigDecimal("9.00"), Currency.getInstance("EUR")),
                        true));
        long offer =
                jdbc.sql("select max(id) from board_offer").query(Long.class).single();
        Random random = new Random(5);
        List<OrderRef> orders = PlainOrders.add(jdbc, ORDERS);
        for (int i = 0; i < ORDERS; i++) {
            int[] blank = BLANKS[random.nextInt(BLANKS.length)];
            jdbc.sql("""
                insert into order_blank (order_id, position, part, across, down, width_mm, height_mm, x_mm, y_mm, degrees,
                    offer_id)
                values (:order, 1, 'PUZZLE', 1, 1, :w, :h, 0, 0, 0, :offer)
                """)
                    .param("order", orders.get(i).id().value())
                    .param("w", blank[0])
                    .param("h", blank[1])
                    .param("offer", offer)
                    .update();
            jdbc.sql("""
                update customer_order set state = 'CONFIRMED', next_stage = 'CUT', promised_on = current_date,
                    confirmed_at = now() - make_interval(days => :days), approved_at = now(), approved_by = 'Robin'
                where id = :order
                """)
                    .param("days", i * WEEKS * 7 / ORDERS)
                    .param("order", orders.get(i).id().value())
                    .update();
        }
        RandomOutlines outlines = new RandomOutlines(11);
        for (int i = 0; i < SHEETS; i++) {
            Outline outline = outlines.next(i % 5 == 0);
            jdbc.sql("""
                insert into sheet (outline, width_mm, height_mm, area_mm2, material, grade, nominal_mm, past, grain, cost,
                    currency, state, entered_at, state_since)
                values (:outline, :w, :h, :area, 'birch-ply', 'CRAFT', 3, 'CLEAN', 'NONE', 1, 'EUR', 'FREE', now(), now())
                """)
                    .param("outline", OutlineText.write(outline))
                    .param("w", outline.bounds().width().mm())
                    .param("h", outline.bounds().height().mm())
                    .param("area", outline.area().mm2())
                    .update();
        }
        jdbc.sql("analyze").update();
    }
}
