package puzzleworkshop.pattern.smallparts;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.algorithm.MinimumDiameter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.Piece;

/**
 * Whether pieces are small parts in the sense of the toy rules: each piece's real outline and thickness against the
 * small-parts cylinder, in any orientation. On the safe side throughout: the wood the beam takes makes a piece smaller
 * and is counted, a tolerance for the cut is added, and what cannot be decided counts as fitting.
 */
public final class SmallParts {

    /** How much smaller than drawn a piece may come out beyond its kerf; common practice. */
    private static final double CUT_TOLERANCE_MM = 0.1;

    /** Above this many pieces a puzzle is no toy under the law of the EU and the UK (UK SI 2011/1881, Schedule 1). */
    private static final int MOST_PIECES_OF_A_TOY = 500;

    private static final int DIRECTIONS = 48;
    private static final int BUDGET_PER_PIECE = 40_000;
    private static final int BUDGET_OF_A_HARD_PIECE = 400_000;
    private static final int BUDGET_PER_PUZZLE = 1_500_000;

    private SmallParts() {}

    /** Judges every piece of a pattern with the thickness and kerf it was made for. */
    public static SmallPartsVerdict judge(CutPattern pattern, IntendedAge age) {
        double slack = pattern.spec().kerf().mm() / 2 + CUT_TOLERANCE_MM;
        double thickness = pattern.spec().thickness().mm();
        List<Integer> small = new ArrayList<>();
        List<Piece> open = new ArrayList<>();
        int budget = BUDGET_PER_PUZZLE;
        for (Piece piece : pattern.pieces()) {
            int own = Math.min(BUDGET_PER_PIECE, budget);
            SmallPartsCylinder.Answer answer = test(piece.outline(), thickness, slack, own);
            if (answer == SmallPartsCylinder.Answer.FITS) {
                small.add(piece.number());
            } else if (answer == SmallPartsCylinder.Answer.UNSURE) {
                open.add(piece);
                budget -= own;
            }
        }
        int undecided = 0;
        for (Piece piece : open) {
            // hardly ever more than one or two, that miss by a hair: what is left is spent on them
            int own = Math.min(BUDGET_OF_A_HARD_PIECE, budget);
            SmallPartsCylinder.Answer answer = test(piece.outline(), thickness, slack, own);
            if (answer != SmallPartsCylinder.Answer.DOES_NOT_FIT) {
                small.add(piece.number());
            }
            if (answer == SmallPartsCylinder.Answer.UNSURE) {
                undecided++;
                budget -= own;
            }
        }
        Collections.sort(small);
        return verdict(
                age, pattern.pieces().size(), small, undecided, pattern.spec().thickness());
    }

    /** One flat piece; {@code slackMm} is how much smaller on all sides than drawn it may be. */
    static SmallPartsCylinder.Answer test(CurvePath outline, double thicknessMm, double slackMm, int budget) {
        Coordinate[] drawn = outline.flattened(0.02).stream()
                .map(p -> new Coordinate(p.xMm(), p.yMm()))
                .toArray(Coordinate[]::new);
        Geometry hull = new ConvexHull(drawn, new GeometryFactory()).getConvexHull();
        // every plane cuts the cylinder in something no wider than its diameter, whatever way it leans
        if (new MinimumDiameter(hull, true).getLength() > 2 * (SmallPartsCylinder.RADIUS_MM + slackMm)) {
            return SmallPartsCylinder.Answer.DOES_NOT_FIT;
        }
        List<Point> corners = outermost(hull.getCoordinates());
        double[][] plan =
                corners.stream().map(p -> new double[] {p.xMm(), p.yMm()}).toArray(double[][]::new);
        return SmallPartsCylinder.test(TurnedSolid.plate(plan, thicknessMm), 0, slackMm, budget);
    }

    /** The outermost hull point in each of 48 directions: a solid inside the real one, so the answer stays safe. */
    private static List<Point> outermost(Coordinate[] hull) {
        Set<Point> kept = new LinkedHashSet<>();
        for (int k = 0; k < DIRECTIONS; k++) {
            double cos = Math.cos(2 * Math.PI * k / DIRECTIONS);
            double sin = Math.sin(2 * Math.PI * k / DIRECTIONS);
            Coordinate best = hull[0];
            for (Coordinate c : hull) {
                if (c.x * cos + c.y * sin > best.x * cos + best.y * sin) {
                    best = c;
                }
            }
            kept.add(Point.of(best.x, best.y));
        }
        return List.copyOf(kept);
    }

    private static SmallPartsVerdict verdict(
            IntendedAge age, int pieces, List<Integer> small, int undecided, Length thickness) {
        boolean some = !small.isEmpty();
        Sentence headline = some
                ? Sentence.of("pattern.small_parts.some", small.size(), pieces)
                : Sentence.of("pattern.small_parts.none", pieces);
        List<Sentence> notes = new ArrayList<>();
        if (some && age == IntendedAge.UNDER_3) {
            notes.add(Sentence.of("pattern.small_parts.never_under_3"));
        }
        if (!some && age == IntendedAge.UNDER_3) {
            notes.add(Sentence.of("pattern.small_parts.abuse"));
        }
        if (undecided > 0) {
            notes.add(Sentence.of("pattern.small_parts.undecided", undecided));
        }
        if (pieces > MOST_PIECES_OF_A_TOY) {
            notes.add(Sentence.of("pattern.small_parts.no_toy", MOST_PIECES_OF_A_TOY));
        }
        notes.add(Sentence.of(
                "pattern.small_parts.computed",
                thickness,
                Length.mm(2 * SmallPartsCylinder.RADIUS_MM),
                Length.mm(SmallPartsCylinder.SHALLOW_MM),
                Length.mm(SmallPartsCylinder.DEEP_MM)));
        return new SmallPartsVerdict(
                age,
                pieces,
                small,
                undecided,
                !(some && age == IntendedAge.UNDER_3),
                headline,
                boxText(age, some),
                notes);
    }

    private static Optional<Sentence> boxText(IntendedAge age, boolean some) {
        if (!some) {
            return Optional.empty();
        }
        return switch (age) {
            case UNDER_3 -> Optional.empty();
            case FROM_3, FROM_6 -> Optional.of(Sentence.of("pattern.small_parts.box"));
            case GROWN_UPS -> Optional.of(Sentence.of("pattern.small_parts.box_grown_ups"));
        };
    }
}
