package puzzleworkshop.geometry.packing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.support.Seeds;

/** The complete searches and the bounds against brute force on a grid: every piece at every whole position. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ExactSearchTest {

    @Test
    void the_corner_search_agrees_with_brute_force() {
        int fitting = 0;
        for (long seed = 0; seed < 2000; seed++) {
            SplittableRandom random = new SplittableRandom(Seeds.from(seed));
            int width = 3 + random.nextInt(4);
            int height = 3 + random.nextInt(4);
            ItemShapes shapes = shapes(random, 2 + random.nextInt(4), width, height);
            boolean truth = bruteForce(shapes, width, height, 0, new boolean[width][height]);
            CornerSearch search = new CornerSearch(shapes, width, height, new WorkBudget(50_000_000));
            assertThat(search.search())
                    .as("seed " + seed)
                    .isEqualTo(truth ? CornerSearch.Answer.YES : CornerSearch.Answer.NO);
            fitting += truth ? 1 : 0;
        }
        assertThat(fitting).isBetween(300, 1700);
    }

    @Test
    void no_bound_exceeds_the_truth_and_the_sheet_search_finds_the_truth() {
        for (long seed = 0; seed < 1000; seed++) {
            SplittableRandom random = new SplittableRandom(Seeds.from(seed));
            int width = 3 + random.nextInt(4);
            int height = random.nextBoolean() ? width : 3 + random.nextInt(4);
            ItemShapes shapes = shapes(random, 2 + random.nextInt(4), width, height);
            int truth = fewest(shapes, width, height);
            SheetSearch search = new SheetSearch(shapes, width, height, new WorkBudget(2_000_000), seed);
            search.search();
            assertThat(LowerBounds.sheets(shapes, width, height))
                    .as("seed " + seed)
                    .isBetween(1, truth);
            assertThat(search.bestSheets).as("seed " + seed).isEqualTo(truth);
            assertThat(search.bound).as("proved, seed " + seed).isEqualTo(truth);
        }
    }

    @Test
    void the_least_length_of_a_roll_is_found_and_proved() {
        for (long seed = 0; seed < 500; seed++) {
            SplittableRandom random = new SplittableRandom(Seeds.from(seed));
            int width = 3 + random.nextInt(4);
            ItemShapes shapes = shapes(random, 2 + random.nextInt(3), width, 6);
            int truth = 1;
            while (!bruteForce(shapes, width, truth, 0, new boolean[width][truth])) {
                truth++;
            }
            StripSearch search = new StripSearch(shapes, width, new WorkBudget(2_000_000), seed);
            search.search();
            assertThat(LowerBounds.length(shapes, width)).as("seed " + seed).isLessThanOrEqualTo(truth);
            assertThat(search.bestLength).as("seed " + seed).isEqualTo(truth);
            assertThat(search.bound).as("proved, seed " + seed).isEqualTo(truth);
        }
    }

    /** A stretch u is dual feasible when sides that fit a sheet together fit stretched as well: tried on all pairs and triples. */
    @Test
    void stretches_are_dual_feasible() {
        for (int full = 2; full <= 24; full++) {
            for (int step = 1; 2 * step <= full; step++) {
                for (int kind = 0; kind < 2; kind++) {
                    LowerBounds.Stretch u = new LowerBounds.Stretch(full, step, kind);
                    for (int a = 1; a < full; a++) {
                        for (int b = 1; a + b <= full; b++) {
                            assertThat(u.of(a) + u.of(b)).isLessThanOrEqualTo(u.of(full));
                            for (int c = 1; a + b + c <= full; c++) {
                                assertThat(u.of(a) + u.of(b) + u.of(c)).isLessThanOrEqualTo(u.of(full));
                            }
                        }
                    }
                }
            }
        }
    }

    private static ItemShapes shapes(SplittableRandom random, int count, int width, int height) {
        int[] w = new int[count];
        int[] h = new int[count];
        boolean[] turnable = new boolean[count];
        for (int i = 0; i < count; i++) {
            w[i] = 1 + random.nextInt(Math.min(width, 4));
            h[i] = 1 + random.nextInt(Math.min(height, 5));
            turnable[i] = random.nextBoolean();
        }
        return new ItemShapes(w, h, turnable, 1);
    }

    private static int fewest(ItemShapes shapes, int width, int height) {
        int n = shapes.count;
        boolean[] fits = new boolean[1 << n];
        for (int hand = 1; hand < 1 << n; hand++) {
            int[] which = new int[n];
            int size = 0;
            for (int i = 0; i < n; i++) {
                if ((hand >> i & 1) == 1) {
                    which[size++] = i;
                }
            }
            fits[hand] = bruteForce(shapes.subset(which, size), width, height, 0, new boolean[width][height]);
        }
        int[] fewest = new int[1 << n];
        Arrays.fill(fewest, n);
        fewest[0] = 0;
        for (int all = 1; all < 1 << n; all++) {
            for (int hand = all; hand > 0; hand = hand - 1 & all) {
                if (fits[hand]) {
                    fewest[all] = Math.min(fewest[all], 1 + fewest[all & ~hand]);
                }
            }
        }
        return fewest[(1 << n) - 1];
    }

    private static boolean bruteForce(ItemShapes shapes, int width, int height, int piece, boolean[][] taken) {
        if (piece == shapes.count) {
            return true;
        }
        for (int turn = 0; turn < (shapes.turnable[piece] ? 2 : 1); turn++) {
            int w = turn == 0 ? shapes.width[piece] : shapes.height[piece];
            int h = turn == 0 ? shapes.height[piece] : shapes.width[piece];
            for (int x = 0; x + w <= width; x++) {
                for (int y = 0; y + h <= height; y++) {
                    if (free(taken, x, y, w, h)) {
                        mark(taken, x, y, w, h, true);
                        if (bruteForce(shapes, width, height, piece + 1, taken)) {
                            return true;
                        }
                        mark(taken, x, y, w, h, false);
                    }
                }
            }
        }
        return false;
    }

    private static boolean free(boolean[][] taken, int x, int y, int w, int h) {
        for (int i = x; i < x + w; i++) {
            for (int j = y; j < y + h; j++) {
                if (taken[i][j]) {
                    return false;
                }
            }
        }
        return true;
    }

    private static void mark(boolean[][] taken, int x, int y, int w, int h, boolean value) {
        for (int i = x; i < x + w; i++) {
            for (int j = y; j < y + h; j++) {
                taken[i][j] = value;
            }
        }
    }
}
