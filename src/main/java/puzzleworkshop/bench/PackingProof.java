package puzzleworkshop.bench;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;
import puzzleworkshop.camera.pieces.PieceCheck;
import puzzleworkshop.measure.OrderId;

/**
 * What photos of the pieces of one puzzle showed before it was packed; kept with the order.
 *
 * @param puzzle which of the order's puzzles, from 1
 * @param expected pieces of the pattern
 * @param seen pieces that were found, those of another puzzle included
 * @param foreign of them, pieces of another puzzle
 * @param missing numbers of missing pieces; where several are too alike to tell, all of them
 * @param troubles what stood in the way of a sure count, in words; empty when nothing did
 * @param photos how many were taken
 */
public record PackingProof(
        long id,
        OrderId order,
        int puzzle,
        int expected,
        int seen,
        int foreign,
        List<List<Integer>> missing,
        String troubles,
        int photos,
        Instant at,
        String who) {

    public PackingProof {
        missing = List.copyOf(missing);
    }

    /** A photo of a proof as it is kept. */
    public record ProofPhoto(int width, int height, List<Edge> edges) {}

    /**
     * Where a piece was seen.
     *
     * @param number of the piece, 0 for one of another puzzle
     * @param edge u, v in turn, in pixels of the kept photo
     */
    public record Edge(int number, int[] edge) {

        /** What lies nearer to the line than this, in pixels of the kept photo, is left out. */
        private static final double FINE = 0.7;

        /** A measured edge, thinned out for showing: corners stay, however few points there are beside them. */
        static Edge of(PieceCheck.SeenPiece piece, double scale) {
            double[] all = piece.edge();
            Coordinate[] places = new Coordinate[all.length / 2 + 1];
            for (int i = 0; i < places.length; i++) {
                places[i] = new Coordinate(all[2 * i % all.length] * scale, all[(2 * i + 1) % all.length] * scale);
            }
            Coordinate[] thinned = simplified(places);
            int[] edge = new int[2 * (thinned.length - 1)];
            for (int i = 0; i < edge.length; i += 2) {
                edge[i] = (int) Math.round(thinned[i / 2].x);
                edge[i + 1] = (int) Math.round(thinned[i / 2].y);
            }
            return new Edge(piece.number(), edge);
        }

        private static Coordinate[] simplified(Coordinate[] ring) {
            return DouglasPeuckerSimplifier.simplify(new GeometryFactory().createLineString(ring), FINE)
                    .getCoordinates();
        }

        String text() {
            return number + " " + Arrays.stream(edge).mapToObj(String::valueOf).collect(Collectors.joining(" "));
        }

        static Edge read(String line) {
            int[] numbers =
                    Arrays.stream(line.split(" ")).mapToInt(Integer::parseInt).toArray();
            return new Edge(numbers[0], Arrays.copyOfRange(numbers, 1, numbers.length));
        }

        public String svgPathData() {
            StringBuilder path = new StringBuilder();
            for (int i = 0; i < edge.length; i += 2) {
                path.append(i == 0 ? 'M' : 'L').append(edge[i]).append(' ').append(edge[i + 1]);
            }
            return path.append('Z').toString();
        }
    }

    public boolean isComplete() {
        return missing.isEmpty() && foreign == 0 && troubles.isEmpty();
    }

    static String text(List<List<Integer>> missing) {
        return missing.stream()
                .map(group -> group.stream().map(String::valueOf).collect(Collectors.joining("/")))
                .collect(Collectors.joining(" "));
    }

    static List<List<Integer>> read(String missing) {
        List<List<Integer>> groups = new ArrayList<>();
        for (String group : missing.isEmpty() ? new String[0] : missing.split(" ")) {
            groups.add(Arrays.stream(group.split("/")).map(Integer::valueOf).toList());
        }
        return groups;
    }
}
