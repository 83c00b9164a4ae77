package puzzleworkshop.camera.rings;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.camera.rings.StraightEdges.Side;

/** Sides whose directions agree, up to quarter turns, within what the photo can tell: set exactly square. */
final class SquareSides {

    /** Edges this far from square may be square, degrees; the photo must agree. */
    static final double SQUARE_DEGREES = 0.6;

    static final double SQUARED_MM = 20;

    final List<Side> sides;
    /** Straight sides of at least {@link #SQUARED_MM}. */
    int straight;
    /** Of these, set square to each other. */
    int squared;
    /** How far the end of one of them lay from square before, at most, mm. */
    double squaredWithin;

    SquareSides(List<Side> sides, double doubtMm) {
        double best = 0;
        double bestLength = 0;
        for (Side base : sides) {
            if (!base.line() || base.length() < SQUARED_MM) {
                continue;
            }
            straight++;
            double length = 0;
            for (Side other : sides) {
                length += other.line() && other.length() >= SQUARED_MM && supports(other, angle(base), doubtMm)
                        ? other.length()
                        : 0;
            }
            if (length > bestLength) {
                bestLength = length;
                best = angle(base);
            }
        }
        double sum = 0;
        double weight = 0;
        for (Side side : sides) {
            if (side.line() && side.length() >= SQUARED_MM && supports(side, best, doubtMm)) {
                sum += off(angle(side), best) * side.length() * side.length();
                weight += side.length() * side.length();
                squared++;
            }
        }
        if (squared < 2) {
            squared = 0;
            this.sides = sides;
            return;
        }
        double direction = best + sum / weight;
        List<Side> set = new ArrayList<>();
        for (Side side : sides) {
            if (side.line() && side.length() >= SQUARED_MM && supports(side, best, doubtMm)) {
                double turned = angle(side) - off(angle(side), direction);
                squaredWithin = Math.max(squaredWithin, Math.abs(off(angle(side), direction)) * side.length() / 2);
                set.add(new Side(
                        side.from(),
                        side.to(),
                        side.length(),
                        side.x(),
                        side.y(),
                        Math.cos(turned),
                        Math.sin(turned),
                        true));
            } else {
                set.add(side);
            }
        }
        this.sides = set;
    }

    private static double angle(Side side) {
        return Math.atan2(side.dy(), side.dx());
    }

    /** Difference of two directions up to quarter turns. */
    private static double off(double angle, double base) {
        double quarter = Math.PI / 2;
        double d = (angle - base) / quarter;
        return (d - Math.rint(d)) * quarter;
    }

    private static boolean supports(Side side, double base, double doubtMm) {
        double off = Math.abs(off(angle(side), base));
        return off < Math.toRadians(SQUARE_DEGREES) && off * side.length() / 2 < Math.max(0.15, 0.7 * doubtMm);
    }
}
