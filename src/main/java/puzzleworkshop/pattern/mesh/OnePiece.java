package puzzleworkshop.pattern.mesh;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.Piece;

/**
 * A piece made again, as a puzzle of its own: a grid of one, whose only shape is the whole of it. Its line comes from {@link
 * puzzleworkshop.pattern.judged.LostPiece} and was verified with the pattern it belongs to.
 */
final class OnePiece {

    private static final double FLATTENING_MM = 0.005;

    private OnePiece() {}

    static CutPattern of(PatternSpec spec) {
        PersonalShape shape = spec.shapes().getFirst();
        CurvePath line = shape.outline();
        var middle = new GeometryFactory()
                .createPolygon(line.flattened(FLATTENING_MM).stream()
                        .map(p -> new Coordinate(p.xMm(), p.yMm()))
                        .toArray(Coordinate[]::new))
                .getCentroid();
        Piece piece = new Piece(
                1, line, Math.abs(line.signedAreaMm2()), Point.of(middle.getX(), middle.getY()), true, shape.name());
        double closest = spec.limits().closestLinesMm();
        return new CutPattern(
                spec,
                List.of(),
                line,
                List.of(piece),
                new CutPattern.Verified(1, 0, closest, closest, 0, true, List.of()),
                0,
                line.lengthMm());
    }
}
