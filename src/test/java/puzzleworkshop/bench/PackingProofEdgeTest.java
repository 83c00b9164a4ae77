package puzzleworkshop.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import puzzleworkshop.camera.pieces.PieceCheck;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PackingProofEdgeTest {

    private static Geometry line(double[] edge) {
        Coordinate[] corners = new Coordinate[edge.length / 2 + 1];
        for (int i = 0; i < corners.length; i++) {
            corners[i] = new Coordinate(edge[2 * i % edge.length], edge[(2 * i + 1) % edge.length]);
        }
        return new GeometryFactory().createLinearRing(corners);
    }

    /** Of a pattern's outline a straight side has two points and a knob has dozens. */
    private static double[] cornersAndKnob() {
        int knob = 60;
        double[] edge = new double[2 * (4 + knob)];
        double[] corners = {0, 0, 400, 0, 400, 400, 0, 400};
        System.arraycopy(corners, 0, edge, 0, corners.length);
        for (int i = 0; i < knob; i++) {
            double angle = Math.PI / 2 + Math.PI * i / (knob - 1);
            edge[8 + 2 * i] = 60 * Math.cos(angle);
            edge[9 + 2 * i] = 200 + 60 * Math.sin(angle);
        }
        return edge;
    }

    @Test
    void an_edge_is_drawn_with_its_corners_whatever_the_distances_of_its_points_are() {
        double[] edge = cornersAndKnob();
        double scale = 0.4;
        PackingProof.Edge drawn = PackingProof.Edge.of(new PieceCheck.SeenPiece(7, 0, edge, 0.1), scale);

        double[] all = Arrays.stream(drawn.edge()).asDoubleStream().toArray();
        Geometry there = line(Arrays.stream(edge).map(place -> place * scale).toArray());
        assertThat(DiscreteHausdorffDistance.distance(line(all), there, 0.1)).isLessThan(1.5);
        assertThat(drawn.edge().length).as("thinned out").isLessThan(edge.length);
        assertThat(PackingProof.Edge.read(drawn.text()).svgPathData()).isEqualTo(drawn.svgPathData());
    }
}
