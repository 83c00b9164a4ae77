package puzzleworkshop.pattern.smallparts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

/** Against turns that are made one by one with Rodrigues' rotation formula (from memory), written here a second time. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class FarkasCertificateTest {

    private static final int CASES = 2_000;
    private static final int TURNS = 50;

    @Test
    void what_holds_within_an_angle_holds_for_every_turn_by_less() {
        SplittableRandom random = new SplittableRandom(12);
        int held = 0;
        for (int i = 0; i < CASES; i++) {
            int demands = 1 + random.nextInt(4);
            double[][] w = new double[demands][];
            double[][] p = new double[demands][];
            double sum = 0;
            for (int d = 0; d < demands; d++) {
                w[d] = vector(random, 1);
                p[d] = vector(random, 30);
                sum += dot(w[d], p[d]);
            }
            double most = sum - random.nextDouble(20);
            FarkasCertificate why = new FarkasCertificate();
            why.begin();
            for (int d = 0; d < demands; d++) {
                why.demand(1, w[d][0], w[d][1], w[d][2], p[d], most / demands);
            }
            double angle = random.nextDouble(0.6);
            if (!why.holdsWithin(angle)) {
                continue;
            }
            held++;
            for (int turn = 0; turn < TURNS; turn++) {
                double[] axis = vector(random, 1);
                double by = turn == 0 ? angle : random.nextDouble(angle + 1e-12);
                double turned = 0;
                for (int d = 0; d < demands; d++) {
                    turned += dot(w[d], rotated(p[d], axis, by));
                }
                assertThat(turned).isGreaterThan(most);
            }
        }
        assertThat(held).isBetween(CASES / 10, CASES * 9 / 10);
    }

    /** A rod along x, 40 long, in a slot of 30: it goes in when it is turned by arccos (3/4), 41.4°. */
    @Test
    void a_rod_in_a_slot_is_kept_out_up_to_nearly_the_angle_at_which_it_goes_in() {
        FarkasCertificate why = new FarkasCertificate();
        why.begin();
        why.demand(1, 1, 0, 0, new double[] {20, 0, 0}, 15);
        why.demand(1, -1, 0, 0, new double[] {-20, 0, 0}, 15);
        assertThat(why.holdsWithin(0)).isTrue();
        assertThat(why.holdsWithin(Math.toRadians(35))).isTrue();
        assertThat(why.holdsWithin(Math.toRadians(41.5))).isFalse();
    }

    @Test
    void without_a_proof_nothing_holds() {
        FarkasCertificate why = new FarkasCertificate();
        why.begin();
        assertThat(why.holdsWithin(0)).isFalse();
        why.demand(1, 1, 0, 0, new double[] {20, 0, 0}, 15);
        why.none();
        assertThat(why.holdsWithin(0)).isFalse();
    }

    private static double[] rotated(double[] p, double[] n, double angle) {
        double length = Math.sqrt(dot(n, n));
        double[] u = {n[0] / length, n[1] / length, n[2] / length};
        double[] across = {u[1] * p[2] - u[2] * p[1], u[2] * p[0] - u[0] * p[2], u[0] * p[1] - u[1] * p[0]};
        double along = dot(u, p);
        double[] turned = new double[3];
        for (int k = 0; k < 3; k++) {
            turned[k] = p[k] * Math.cos(angle) + across[k] * Math.sin(angle) + u[k] * along * (1 - Math.cos(angle));
        }
        return turned;
    }

    private static double[] vector(SplittableRandom random, double longest) {
        return new double[] {
            random.nextDouble(-longest, longest),
            random.nextDouble(-longest, longest),
            random.nextDouble(-longest, longest)
        };
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }
}
