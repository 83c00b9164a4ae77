package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.JtsLines;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.RandomSpecs;
import puzzleworkshop.pattern.mesh.PatternMaker;

/**
 * How long a puzzle of 2,000 pieces takes to draw and verify (median of five after a warm-up), and whether 10,000
 * random patterns hold a crossing or a line drawn twice in the eyes of JTS.
 */
public final class PatternBenchmark implements Benchmark {

    private static final int RANDOM_PATTERNS = 10_000;
    private static final long SEED = 20261125;

    @Override
    public String run(Optional<Path> folder, PrintStream out) {
        double[] seconds = new double[5];
        PatternMaker.make(large(0));
        for (int i = 0; i < seconds.length; i++) {
            long started = System.nanoTime();
            CutPattern pattern = PatternMaker.make(large(i + 1));
            seconds[i] = (System.nanoTime() - started) / 1e9;
            out.printf(
                    "2,000 pieces, seed %d: %.3f s, %d edges compared, %d redrawn, smallest gap %.3f mm of %.3f allowed%n",
                    i + 1,
                    seconds[i],
                    pattern.verified().edges(),
                    pattern.verified().redrawn(),
                    pattern.verified().smallestGapMm(),
                    pattern.verified().closestAllowedMm());
        }
        Arrays.sort(seconds);

        Random random = new Random(SEED);
        int crossings = 0;
        int doubled = 0;
        long pieces = 0;
        long redrawn = 0;
        for (int i = 0; i < RANDOM_PATTERNS; i++) {
            CutPattern pattern = PatternMaker.make(RandomSpecs.next(random));
            crossings += JtsLines.crossings(pattern);
            doubled += JtsLines.doubled(pattern);
            pieces += pattern.pieces().size();
            redrawn += pattern.verified().redrawn();
            if ((i + 1) % 1000 == 0) {
                out.printf(
                        "%,d random patterns, %,d pieces, %,d edges redrawn: %d with a crossing, %d stretches doubled%n",
                        i + 1, pieces, redrawn, crossings, doubled);
            }
        }
        return String.format("pieces=%d seconds=%.3f crossings=%d doubled=%d", 2000, seconds[2], crossings, doubled);
    }

    private static PatternSpec large(long seed) {
        return PatternSpec.of(Size.mm(1000, 700), new PieceGrid(50, 40), seed);
    }
}
