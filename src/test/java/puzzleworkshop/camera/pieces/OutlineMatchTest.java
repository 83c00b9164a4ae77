package puzzleworkshop.camera.pieces;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import puzzleworkshop.camera.pieces.OutlineMatch.Known;
import puzzleworkshop.camera.pieces.OutlineMatch.Match;

/**
 * A rack of 200 offcuts in families of four: twins that differ by a millimetre or two in one side, or by one cut corner. Truth is
 * known because they are made here; measured ones are turned, flipped, and off by what a photo leaves.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class OutlineMatchTest {

    private static final double PHOTO_MM = 0.15;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void of_200_with_many_near_twins_none_is_named_wrong_and_most_are_named(long seed) {
        Random random = new Random(seed);
        List<Known> rack = rack(random);
        List<double[]> measured = new ArrayList<>();
        List<Long> truth = new ArrayList<>();
        for (Known known : rack) {
            if (random.nextInt(5) < 2) {
                measured.add(seen(known.ring(), random));
                truth.add(known.number());
            }
        }
        int fresh = 20;
        for (int i = 0; i < fresh; i++) {
            measured.add(seen(offcut(new Random(seed * 1000 + 500 + i)), random));
            truth.add(0L);
        }
        List<Match> matches = OutlineMatch.of(measured, rack);
        int sure = 0;
        int there = measured.size() - fresh;
        for (int i = 0; i < matches.size(); i++) {
            if (truth.get(i) == 0) {
                assertThat(matches.get(i).numbers())
                        .as("a new offcut, number " + i)
                        .isEmpty();
            } else {
                assertThat(matches.get(i).numbers())
                        .as("offcut " + truth.get(i))
                        .contains(truth.get(i));
                sure += matches.get(i).isSure() ? 1 : 0;
            }
        }
        assertThat((double) sure / there).as("share named alone").isGreaterThan(0.9);
    }

    @Test
    void equal_boards_are_sure_when_all_are_there_and_said_together_when_one_is_not() {
        Random random = new Random(5);
        double[] board = {0, 0, 300, 0, 300, 200, 0, 200};
        List<Known> rack = List.of(
                new Known(1, board), new Known(2, board), new Known(3, board), new Known(4, offcut(new Random(9))));
        List<Match> all = OutlineMatch.of(List.of(seen(board, random), seen(board, random), seen(board, random)), rack);
        assertThat(all).allMatch(Match::isSure);
        assertThat(all.stream().flatMap(m -> m.numbers().stream())).containsExactlyInAnyOrder(1L, 2L, 3L);
        List<Match> two = OutlineMatch.of(List.of(seen(board, random), seen(board, random)), rack);
        assertThat(two).allSatisfy(m -> assertThat(m.numbers()).containsExactlyInAnyOrder(1L, 2L, 3L));
    }

    @Test
    void an_empty_rack_knows_nothing_and_no_photo_finds_nothing() {
        assertThat(OutlineMatch.of(List.of(offcut(new Random(1))), List.of())).allMatch(Match::isNew);
        assertThat(OutlineMatch.of(List.of(), List.of(new Known(1, offcut(new Random(1))))))
                .isEmpty();
    }

    private static List<Known> rack(Random random) {
        List<Known> rack = new ArrayList<>();
        for (int family = 0; family < 50; family++) {
            double[] first = offcut(random);
            rack.add(new Known(4 * family + 1, first));
            for (int twin = 2; twin <= 4; twin++) {
                rack.add(new Known(4 * family + twin, twin(first, twin - 1, random)));
            }
        }
        return rack;
    }

    /** An elbow with one slanted side. */
    private static double[] offcut(Random random) {
        double w = 150 + 250 * random.nextDouble();
        double h = 100 + 150 * random.nextDouble();
        double a = 30 + 60 * random.nextDouble();
        double b = 25 + 40 * random.nextDouble();
        double slant = 5 + 25 * random.nextDouble();
        return new double[] {0, 0, w, 0, w - slant, h - b, w - slant - a, h - b, w - slant - a, h, 0, h};
    }

    /** One corner 2 to 3 mm elsewhere, always in another direction than the other twins'. */
    private static double[] twin(double[] of, int which, Random random) {
        double[] ring = of.clone();
        double by = 2 + random.nextDouble();
        switch (which) {
            case 1 -> {
                ring[2] += by;
                ring[4] += by;
            }
            case 2 -> {
                ring[9] += by;
                ring[11] += by;
            }
            default -> {
                ring[5] -= by;
                ring[7] -= by;
            }
        }
        return ring;
    }

    /** Turned, maybe flipped, each corner off by what a photo leaves. */
    private static double[] seen(double[] ring, Random random) {
        double angle = 2 * Math.PI * random.nextDouble();
        double flip = random.nextBoolean() ? -1 : 1;
        double[] seen = new double[ring.length];
        for (int i = 0; i < ring.length; i += 2) {
            double x = flip * ring[i];
            seen[i] = Math.cos(angle) * x - Math.sin(angle) * ring[i + 1] + 40 + PHOTO_MM * random.nextGaussian();
            seen[i + 1] = Math.sin(angle) * x + Math.cos(angle) * ring[i + 1] - 70 + PHOTO_MM * random.nextGaussian();
        }
        return seen;
    }
}
