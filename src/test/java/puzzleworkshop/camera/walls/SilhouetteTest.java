package puzzleworkshop.camera.walls;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import puzzleworkshop.camera.OutlineError;
import puzzleworkshop.camera.model.Lens;
import puzzleworkshop.camera.model.View;
import puzzleworkshop.camera.rings.Ring;

/** From the edge seen to the board's own. What is seen is made here by JTS: all of the board between its foot and its top. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class SilhouetteTest {

    private static final double THICK = 9;
    private static final double EYE_X = 60;
    private static final double EYE_Y = 250;
    private static final double HEIGHT = 300;

    /** Straight down. */
    private static final View VIEW =
            new View(3000, 2000, 1500, new Lens(0, 0, 0, 0), new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1}, new double[] {
                -EYE_X, -EYE_Y, HEIGHT
            });

    private static final double[] BOARD = {20, 30, 170, 44, 160, 200, 96, 236, 24, 210};

    @Test
    void where_the_walls_end_no_spike_remains() {
        OutlineError error = OutlineError.between(BOARD, found(seen(BOARD)), 0);
        assertThat(error.largest()).as("%s", error).isLessThan(0.35);
        assertThat(error.outside()).as("%s", error).isLessThan(0.1);
    }

    @Test
    void a_corner_far_from_the_eye_is_not_drawn_out_along_its_upright_edge() {
        // the tip shows its upright edge from the side; that is part of what is seen, and none of the board
        double[] tip = {90, 40, 200, 20, 130, 110, 126, 62, 90, 70};
        assertThat(OutlineError.between(tip, found(seen(tip)), 0).largest()).isLessThan(0.4);
    }

    @Test
    void a_hole_is_as_large_as_in_the_board_and_not_as_what_is_seen_through_it() {
        double[] hole = {60, 90, 100, 90, 100, 130, 60, 130};
        double shrink = (HEIGHT - THICK) / HEIGHT;
        Geometry through = OutlineError.polygon(hole).intersection(raised(OutlineError.polygon(hole), 1 / shrink));
        double[] ring = backwards(ring((Polygon) through));
        double[] found = new Silhouette(VIEW, THICK).onBoard(Ring.spaced(ring, Ring.SPACING));
        assertThat(Ring.area(found)).isNegative();
        // corners that its own walls hide are not seen
        OutlineError error = OutlineError.between(hole, found, 0);
        assertThat(error.p95()).as("%s", error).isLessThan(0.6);
        assertThat(error.largest()).as("%s", error).isLessThan(1.5);
    }

    private static double[] found(double[] seen) {
        return new Silhouette(VIEW, THICK).onBoard(Ring.spaced(seen, Ring.SPACING));
    }

    private static double[] seen(double[] board) {
        Polygon foot = OutlineError.polygon(board);
        Geometry all = foot;
        for (int i = 1; i <= 200; i++) {
            all = all.union(raised(foot, HEIGHT / (HEIGHT - THICK * i / 200)));
        }
        return ring((Polygon) all);
    }

    private static Geometry raised(Geometry foot, double by) {
        return AffineTransformation.scaleInstance(by, by, EYE_X, EYE_Y).transform(foot);
    }

    private static double[] ring(Polygon polygon) {
        Coordinate[] around = polygon.getExteriorRing().getCoordinates();
        double[] ring = new double[2 * around.length - 2];
        for (int i = 0; i < around.length - 1; i++) {
            ring[2 * i] = around[i].x;
            ring[2 * i + 1] = around[i].y;
        }
        return Ring.area(ring) > 0 ? ring : backwards(ring);
    }

    private static double[] backwards(double[] ring) {
        double[] turned = new double[ring.length];
        for (int i = 0; i < ring.length; i += 2) {
            turned[i] = ring[ring.length - 2 - i];
            turned[i + 1] = ring[ring.length - 1 - i];
        }
        return turned;
    }
}
