package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.util.FileSystemUtils;
import puzzleworkshop.PuzzleWorkshop;
import puzzleworkshop.access.DemoWorkshop;
import puzzleworkshop.boards.BlankPlanner;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.RandomOutlines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.OfferDesk;
import puzzleworkshop.offers.PuzzleWish;
import puzzleworkshop.offers.Wish;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.find.RemainderWorth;
import puzzleworkshop.sheets.find.SheetFinder;

/**
 * New order while one types: 3,000 sheets in the rack and 60 open orders. Each wish differs from the one before in its size,
 * so that nothing but what is the same for all (shapes of sheets, the plan of the week) can be known already.
 */
final class OfferBenchmark implements Benchmark {

    private static final int SHEETS = Integer.getInteger("bench.sheets", 3_000);
    private static final int OPEN = 60;
    private static final int WARM_UP = 4;
    private static final int WISHES = Integer.getInteger("bench.wishes", 40);
    /** Of the demo's machine. */
    private static final Size BED = Size.mm(620, 420);

    private static final Size BLANK = Size.mm(319, 232);
    private static final BoardKind BIRCH = new BoardKind("birch-ply", Grade.CRAFT.name(), Length.mm(3));

    @Override
    public String run(Optional<Path> folder, PrintStream out) throws Exception {
        Path data = Files.createTempDirectory("puzzle-workshop-offer");
        try (ConfigurableApplicationContext program = new SpringApplicationBuilder(PuzzleWorkshop.class)
                .run("--server.port=0", "--puzzleworkshop.data=" + data)) {
            OpenWorkshop.in(program);
            program.getBean(DemoWorkshop.class).fill((share, what) -> {});
            fillRack(program);
            int open = PagesBenchmark.open(program.getBean(JdbcClient.class), OPEN);
            OfferDesk desk = program.getBean(OfferDesk.class);
            out.printf(Locale.ROOT, "%d sheets, %d open orders, %d wishes each%n", SHEETS, open, WISHES);
            suggest(program, out);
            String last = "";
            for (int puzzles : List.of(50, 500, 1)) {
                List<Double> taken = new ArrayList<>();
                int blocks = 0;
                for (int i = -WARM_UP; i < WISHES; i++) {
                    long begin = System.nanoTime();
                    Offer offer = desk.workOut(wish(puzzles, i + WARM_UP));
                    if (i >= 0) {
                        taken.add((System.nanoTime() - begin) / 1e6);
                    }
                    // No day within the plan's horizon is an answer too; no price is none.
                    if (offer.price().isEmpty()) {
                        throw new IllegalStateException("No offer: " + offer.complaints());
                    }
                    blocks = offer.boards().orElseThrow().blocks().size();
                }
                Collections.sort(taken);
                last = String.format(
                        Locale.ROOT,
                        "sheets=%d puzzles=%d p50_ms=%.0f p95_ms=%.0f",
                        SHEETS,
                        puzzles,
                        taken.get(taken.size() / 2),
                        taken.get(Math.min(taken.size() - 1, (int) Math.ceil(taken.size() * 0.95) - 1)));
                out.printf("%d puzzles on %d boards%n", puzzles, blocks);
                if (puzzles != 1) {
                    out.println("RESULT offer " + last);
                }
            }
            return last;
        } finally {
            FileSystemUtils.deleteRecursively(data);
        }
    }

    /** The sheet for one blank, by what remainders are worth: as the rack is, and as the first answer after it has changed. */
    private static void suggest(ConfigurableApplicationContext program, PrintStream out) {
        SheetFinder finder = program.getBean(SheetFinder.class);
        SheetRack rack = program.getBean(SheetRack.class);
        boolean learned =
                program.getBean(RemainderWorth.class).ladder(List.of()).isPresent();
        List<Double> same = new ArrayList<>();
        List<Double> changed = new ArrayList<>();
        for (int i = -WARM_UP; i < WISHES; i++) {
            BoardFacts facts = BoardFacts.clean(BIRCH.material(), Grade.CRAFT, BIRCH.thickness());
            rack.add(Outline.rectangle(Size.mm(500 + i, 400)), facts, Money.of("2.00", "EUR"), "Robin");
            double first = millis(() -> finder.suggest(BlankPlanner.wish(BLANK, BIRCH, Length.mm(1))));
            double again = millis(() -> finder.suggest(BlankPlanner.wish(BLANK, BIRCH, Length.mm(1))));
            if (i >= 0) {
                changed.add(first);
                same.add(again);
            }
        }
        out.printf(
                Locale.ROOT,
                "RESULT sheet sheets=%d learned=%s p50_ms=%.0f p95_ms=%.0f after_a_change_p50_ms=%.0f"
                        + " after_a_change_p95_ms=%.0f%n",
                SHEETS,
                learned,
                share(same, 0.5),
                share(same, 0.95),
                share(changed, 0.5),
                share(changed, 0.95));
    }

    private static double millis(Runnable work) {
        long begin = System.nanoTime();
        work.run();
        return (System.nanoTime() - begin) / 1e6;
    }

    private static double share(List<Double> taken, double share) {
        List<Double> sorted = taken.stream().sorted().toList();
        return sorted.get(Math.min(sorted.size() - 1, (int) Math.ceil(sorted.size() * share) - 1));
    }

    private static void fillRack(ConfigurableApplicationContext program) {
        SheetRack rack = program.getBean(SheetRack.class);
        RandomOutlines outlines = new RandomOutlines(20261129);
        BoardFacts facts = BoardFacts.clean(BIRCH.material(), Grade.CRAFT, BIRCH.thickness());
        program.getBean(TransactionTemplate.class).executeWithoutResult(status -> {
            for (int i = 0; i < SHEETS; i++) {
                Outline outline = outlines.next(i % 3 == 0).atOrigin();
                while (!outline.bounds().fitsUpright(BED)) {
                    outline = outlines.next(i % 3 == 0).atOrigin();
                }
                rack.add(outline, facts.at("R" + i % 40), Money.of("2.00", "EUR"), "Robin");
            }
        });
        program.getBean(JdbcClient.class).sql("analyze").update();
    }

    private static Wish wish(int puzzles, int step) {
        return new Wish(
                PuzzleWish.plain(
                        Size.mm(180 + 2 * (step % 30), 130 + step % 20),
                        48,
                        CutStyle.KNOBS,
                        PuzzleEdge.square(),
                        7,
                        IntendedAge.FROM_6,
                        false),
                puzzles,
                BIRCH,
                Optional.empty(),
                Optional.empty(),
                "",
                Wish.Day.ANY,
                Wish.Terms.usual(Currency.getInstance("EUR")));
    }
}
