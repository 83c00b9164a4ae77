package puzzleworkshop.pattern.mesh;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.edges.EdgeShape;

/**
 * How many edges of this style and length there can be, of which no two are alike within a distance.
 *
 * <p>Of many edges drawn at random the share of pairs within the distance is the mean share of all edges that one edge rules
 * out, its ball. At least one in the ball's share can be had, because a set that cannot be added to has balls that cover all
 * (Gilbert 1952, Varshamov 1957); at most one in the share of the ball of half the distance, because those do not overlap
 * (Hamming 1950). Both bounds are taken with the mean ball, so they are estimates where edges are not spread evenly. Small
 * shares are extended from larger distances by the power law that pairs follow (Grassberger and Procaccia, Measuring the
 * strangeness of strange attractors, Physica D 9 (1983) 189): its exponent tells how many ways an edge can differ in.
 *
 * @param atLeast edges that can be had, as far as {@link #MOST}
 * @param atMost edges beyond which there are none
 * @param ways exponent of the power law
 * @param needed inner edges of the pattern asked about
 * @param distanceMm that they must differ by
 */
public record KnobRoom(double atLeast, double atMost, double ways, int needed, double distanceMm) {

    public static final double MOST = 1e12;

    private static final int SAMPLE_SIDE = 14;
    /** The larger distance is felt by some pairs even where pieces are large. */
    private static final double[] FARTHER = {1, 1.5, 2.2, 3.2};

    private static final int ENOUGH_PAIRS = 30;
    private static final long SEED = 20261129;

    public static KnobRoom of(PatternSpec spec) {
        Size piece = spec.grid().pieceSize(spec.size());
        Size large = Size.mm(piece.width().mm() * SAMPLE_SIDE, piece.height().mm() * SAMPLE_SIDE);
        // as many bends in a line as the pattern itself has, which depends on its count
        PatternSpec sample = new PatternSpec(
                large,
                new PieceGrid(SAMPLE_SIDE, SAMPLE_SIDE),
                SEED,
                spec.style(),
                puzzleworkshop.pattern.PuzzleEdge.square(),
                spec.thickness(),
                spec.kerf(),
                List.of());
        List<EdgeShape> shapes = new ArrayList<>();
        for (Mesh.Edge edge : new GridMesh(sample).mesh.edges) {
            if (edge.kind == Mesh.Kind.INNER) {
                shapes.add(EdgeShape.of(edge.variant(0, 1)));
            }
        }
        double need = UnlikeLines.needMm(spec);
        int columns = spec.grid().columns();
        int rows = spec.grid().rows();
        int needed = columns * (rows - 1) + rows * (columns - 1);
        return of(shapes, need, needed);
    }

    private static KnobRoom of(List<EdgeShape> shapes, double need, int needed) {
        long[] within = new long[FARTHER.length];
        double farthest = need * FARTHER[FARTHER.length - 1];
        for (int i = 0; i < shapes.size(); i++) {
            EdgeShape other = shapes.get(i).turned();
            for (int j = 0; j < i; j++) {
                double distance = Math.min(
                        shapes.get(j).distanceTo(shapes.get(i), farthest),
                        shapes.get(j).distanceTo(other, farthest));
                for (int k = 0; k < FARTHER.length; k++) {
                    if (distance <= need * FARTHER[k]) {
                        within[k]++;
                    }
                }
            }
        }
        double pairs = shapes.size() * (shapes.size() - 1) / 2.0;
        int last = FARTHER.length - 1;
        int first = 0;
        while (first < last - 1 && within[first] < ENOUGH_PAIRS) {
            first++;
        }
        if (within[first] == 0 || within[last] <= within[first]) {
            return new KnobRoom(pairs, MOST, 0, needed, need);
        }
        double ways = Math.log((double) within[last] / within[first]) / Math.log(FARTHER[last] / FARTHER[first]);
        double ball = within[first] / pairs * Math.pow(1 / FARTHER[first], ways);
        return new KnobRoom(Math.min(MOST, 1 / ball), Math.min(MOST, Math.pow(2, ways) / ball), ways, needed, need);
    }
}
