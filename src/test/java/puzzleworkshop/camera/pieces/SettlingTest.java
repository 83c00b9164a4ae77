package puzzleworkshop.camera.pieces;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.util.AffineTransformation;
import puzzleworkshop.camera.OutlineError;
import puzzleworkshop.camera.PieceScenes;
import puzzleworkshop.camera.outline.TopView;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternMaker;

/** A piece of 25 mm drawn on paper: a face, walls beside it where the camera sees them, and noise. Light as code values. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class SettlingTest {

    private static final double CELL = 0.125;
    private static final double PAPER = 0.92;
    private static final double WALL = 0.3;

    private static final List<PieceShape> PATTERN =
            PieceScenes.shapes(PatternMaker.make(PatternSpec.of(Size.mm(125, 100), new PieceGrid(5, 4), 8)));

    private static PieceProfile profile(int number) {
        return new PieceProfile(PATTERN.get(number - 1).ring(), false);
    }

    /** Swept from its top to its foot a piece hides the paper; what of that is not face is wall. */
    private static OutlineSearch.Sight photo(Geometry face, double footX, double footY, double light) {
        Geometry[] sweep = new Geometry[12];
        for (int i = 0; i < sweep.length; i++) {
            double share = (i + 1.0) / sweep.length;
            sweep[i] = AffineTransformation.translationInstance(share * footX, share * footY)
                    .transform(face);
        }
        IndexedPointInAreaLocator top = new IndexedPointInAreaLocator(face);
        IndexedPointInAreaLocator walls = new IndexedPointInAreaLocator(
                face.getFactory().createGeometryCollection(sweep).union());
        return (left, upper, right, lower) -> {
            int columns = (int) Math.ceil((right - left) / CELL) + 1;
            int rows = (int) Math.ceil((lower - upper) / CELL) + 1;
            float[] code = new float[3 * columns * rows];
            Random noise = new Random(5);
            for (int cell = 0; cell < columns * rows; cell++) {
                Coordinate at = new Coordinate(left + cell % columns * CELL, upper + cell / columns * CELL);
                double level = top.locate(at) == Location.INTERIOR
                        ? light
                        : walls.locate(at) == Location.INTERIOR ? WALL : PAPER;
                for (int c = 0; c < 3; c++) {
                    code[3 * cell + c] = (float) (level + 0.004 * noise.nextGaussian());
                }
            }
            return new TopView.Patch(left, upper, columns, rows, code);
        };
    }

    private static Settling settled(PieceProfile piece, OutlineSearch.Sight photo, double x, double y) {
        Pose pose = new Pose();
        pose.cos = 1;
        pose.x = x;
        pose.y = y;
        Settling settling = new Settling(0, new PlaceEdge(piece.ring), pose, photo.patch(-25, -25, 25, 25));
        settling.settle(Settling.ROUGH);
        settling.settle(Settling.NEARER);
        settling.settle(Settling.FINE);
        return settling;
    }

    @Test
    void an_edge_settles_where_the_photo_steps() {
        PieceProfile piece = profile(7);
        Settling settling = settled(piece, photo(OutlineError.polygon(piece.ring), 0, 0, 0.5), 1.1, -0.8);
        assertThat(settling.distance()).isLessThan(0.12);
        assertThat(settling.pose.x).isCloseTo(0, within(0.05));
        assertThat(settling.pose.y).isCloseTo(0, within(0.05));
    }

    /** The wall's dark foot steps from the paper more than its top does from a pale face that hardly steps from the paper elsewhere. */
    @Test
    void an_edge_that_settled_at_the_foot_of_its_walls_is_found_at_their_top() {
        PieceProfile piece = profile(7);
        double[] foot = {1.4, 0.6};
        OutlineSearch.Sight photo = photo(OutlineError.polygon(piece.ring), foot[0], foot[1], PAPER - 0.05);
        Settling atFoot = settled(piece, photo, foot[0], foot[1]);
        assertThat(Math.hypot(atFoot.pose.x, atFoot.pose.y)).as("drawn aside").isGreaterThan(0.3);

        Settling atTop = atFoot.besides(foot);
        assertThat(atTop.distance()).isLessThan(atFoot.distance());
        assertThat(Math.hypot(atTop.pose.x, atTop.pose.y)).isLessThan(0.15);
    }

    /**
     * A third of the face is as pale as the paper and the middle of the rest is told: with its edges alone it is found in its turn,
     * and no other piece of the pattern covers as much.
     */
    @Test
    void what_is_pale_in_part_is_found_by_the_edges_that_are_seen() {
        PieceProfile piece = profile(12);
        double angle = Math.toRadians(137);
        Geometry lying = AffineTransformation.rotationInstance(angle)
                .translate(2, -3)
                .transform(OutlineError.polygon(piece.ring));
        Geometry pale =
                lying.getFactory().createPoint(new Coordinate(2 - 14, -3 - 4)).buffer(15);
        Geometry seen = lying.difference(pale);
        assertThat(seen.getArea()).isLessThan(0.75 * lying.getArea());
        OutlineSearch.Sight photo = photo(seen, 0, 0, 0.6);
        OutlineSearch search = OutlineSearch.around(
                seen.getCentroid().getX(), seen.getCentroid().getY(), 22, photo);

        List<OutlineSearch.Start> starts = new ArrayList<>();
        for (int i = 0; i < PATTERN.size(); i++) {
            starts.addAll(search.of(i + 1, new PlaceEdge(profile(i + 1).ring), 1));
        }
        starts.sort(Comparator.comparingDouble(OutlineSearch.Start::covered).reversed());
        OutlineSearch.Start best = starts.getFirst();
        assertThat(best.place()).isEqualTo(12);
        assertThat(best.covered()).isBetween(0.55, 0.9);
        assertThat(Math.hypot(best.pose().x - 2, best.pose().y + 3)).isLessThan(1.5);
        assertThat(Math.atan2(best.pose().sin, best.pose().cos)).isCloseTo(angle, within(Math.toRadians(5)));
        assertThat(starts.get(1).covered()).isLessThan(best.covered() - 0.05);
    }

    /** A pale stretch parts a piece into two things; both are found to be of one piece, from a middle that may lie beside it. */
    @Test
    void what_is_laid_in_twice_at_one_place_is_one_piece() {
        double[] ring = profile(12).ring;
        PictureFit.Laid better = laid(ring, 0.1, 0, 0);
        PictureFit.Laid fragment = laid(ring, 0.2, 14, 14);
        assertThat(better.covers(fragment)).isTrue();
        double[] beside = ring.clone();
        for (int i = 0; i < beside.length; i += 2) {
            beside[i] += 30;
        }
        assertThat(better.covers(laid(beside, 0.2, 30, 0))).isFalse();
    }

    private static PictureFit.Laid laid(double[] ring, double distance, double blobX, double blobY) {
        return new PictureFit.Laid(new PieceCheck.LaidPiece(ring, new double[] {distance}, 500), 0, ring, blobX, blobY);
    }
}
