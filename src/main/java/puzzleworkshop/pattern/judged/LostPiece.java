package puzzleworkshop.pattern.judged;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.Piece;

/**
 * One piece of a puzzle cut again, to fit into the hole that it left: lost by the customer, or broken at the bench.
 *
 * <p>The neighbours were cut with the kerf of their day, so the hole reaches half that kerf beyond the drawn line, and
 * the piece that was in it ended half a kerf inside. Cut along the drawn line with the same kerf, the new one ends there
 * too; with another kerf the line is moved outwards by half the difference. Where the old puzzle came out larger or smaller than
 * drawn (a stretch of the machine that was since set right), the line is stretched as the old lines were.
 *
 * @param piece which
 * @param line to be followed by the beam, closed, moved so that its bounds begin at 0, 0
 * @param inPuzzle the piece's place in the finished puzzle, as drawn
 */
public record LostPiece(Piece piece, CurvePath line, Bounds inPuzzle) {

    /** Chords of a moved line stay within this of it. */
    private static final double FLATTENING_MM = 0.005;

    private static final int STRETCHES_A_QUARTER = 24;
    private static final GeometryFactory JTS = new GeometryFactory();

    /**
     * How the old puzzle's lines lie to the new ones.
     *
     * @param kerf of the beam today
     * @param acrossStretch real size of the old puzzle over its drawn size, across; 1 as drawn
     * @param downStretch the same down
     * @param then kerf of the beam that cut the old puzzle, where that is known; else the pattern's
     */
    public record Today(Length kerf, double acrossStretch, double downStretch, Optional<Length> then) {

        private static final double MOST_STRETCH = 0.02;

        public Today {
            if (kerf.mm() < 0
                    || !(Math.abs(acrossStretch - 1) <= MOST_STRETCH)
                    || !(Math.abs(downStretch - 1) <= MOST_STRETCH)) {
                throw new IllegalArgumentException("A kerf of " + kerf.mm() + " mm, stretched by " + acrossStretch
                        + " across and " + downStretch + " down");
            }
        }

        public Today(Length kerf, double acrossStretch, double downStretch) {
            this(kerf, acrossStretch, downStretch, Optional.empty());
        }

        public static Today withKerf(Length kerf) {
            return new Today(kerf, 1, 1);
        }
    }

    /** @param number of the piece, see {@link Piece#number} */
    public static LostPiece of(CutPattern pattern, int number, Today today) {
        Piece piece = pattern.pieces().get(number - 1);
        Bounds bounds = piece.outline().bounds();
        CurvePath stretched = piece.outline()
                .transformed(AffineTransform.getScaleInstance(today.acrossStretch(), today.downStretch()));
        double outwards =
                (today.kerf().mm() - today.then().orElse(pattern.spec().kerf()).mm()) / 2;
        CurvePath line = outwards == 0 ? stretched : moved(stretched, outwards);
        Bounds drawn = line.bounds();
        return new LostPiece(piece, line.translated(-drawn.minX(), -drawn.minY()), bounds);
    }

    private static CurvePath moved(CurvePath outline, double outwards) {
        BufferParameters round = new BufferParameters(STRETCHES_A_QUARTER);
        Geometry moved = BufferOp.bufferOp(polygon(outline), outwards, round);
        Coordinate[] ring = ((Polygon) largest(moved)).getExteriorRing().getCoordinates();
        List<Point> points = new ArrayList<>(ring.length);
        for (Coordinate c : ring) {
            points.add(Point.of(c.x, c.y));
        }
        points.removeLast();
        CurvePath path = CurvePath.through(points, true);
        return path.signedAreaMm2() > 0 ? path : path.reversed();
    }

    private static Geometry largest(Geometry parts) {
        return java.util.stream.IntStream.range(0, parts.getNumGeometries())
                .mapToObj(parts::getGeometryN)
                .max(Comparator.comparingDouble(Geometry::getArea))
                .orElseThrow();
    }

    private static Polygon polygon(CurvePath outline) {
        return JTS.createPolygon(outline.flattened(FLATTENING_MM).stream()
                .map(p -> new Coordinate(p.xMm(), p.yMm()))
                .toArray(Coordinate[]::new));
    }

    /** The piece under a point of the finished puzzle; empty outside of it. */
    public static Optional<Piece> at(CutPattern pattern, Point point) {
        return pattern.pieces().stream().filter(piece -> holds(piece, point)).findFirst();
    }

    private static boolean holds(Piece piece, Point point) {
        Bounds bounds = piece.outline().bounds();
        return bounds.holds(Bounds.at(point))
                && polygon(piece.outline()).contains(JTS.createPoint(new Coordinate(point.xMm(), point.yMm())));
    }

    /** Size of the piece. */
    public Size size() {
        return Size.mm(line.bounds().width(), line.bounds().height());
    }

    /** What the beam follows, its corner a margin away from the blank's. */
    public CutPlan plan(Length margin) {
        return CutPlan.of("Piece " + piece.number(), List.of(), List.of(line), CutPlan.Sequence.INNER_FIRST)
                .movedBy(margin.mm(), margin.mm());
    }

    /** Its print: the place in the finished puzzle with overhang all round, in millimetres of the finished puzzle. */
    public Bounds print(Length overhang) {
        return inPuzzle.grownBy(overhang.mm());
    }
}
