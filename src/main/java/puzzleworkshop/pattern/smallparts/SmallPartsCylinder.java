package puzzleworkshop.pattern.smallparts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Whether a solid fits entirely into the small-parts cylinder: 31.75 mm across, open at the top, its bottom slanted by
 * 45° so that it is 25.4 mm deep on one side and 57.15 mm on the other (16 CFR 1501.4, figure 1: 1.25, 1 and 2.25 in).
 *
 * <p>The inside of the cylinder is convex, so a solid fits exactly when its convex hull does, and it is enough to look
 * at corner points (and a roundness about them, for a ball or a rounded rod). For one orientation the answer is exact:
 * the solid is raised to the rim, and the best place in plan is the right-most point of an intersection of discs. All
 * orientations are covered by boxes of quaternions that are halved until they are decided: a whole box is out when what
 * forbids its middle orientation forbids all of it ({@link FarkasCertificate}). What is not decided within the budget is
 * answered {@link Answer#UNSURE} and must be treated as fitting.
 */
final class SmallPartsCylinder {

    static final double RADIUS_MM = 31.75 / 2;
    static final double SHALLOW_MM = 25.4;
    static final double DEEP_MM = 57.15;

    private static final double BOTTOM = SHALLOW_MM + RADIUS_MM;
    private static final double ROOT_2 = Math.sqrt(2);
    /** The search along one line stops this close to its best; the cylinder is taken larger by it. */
    private static final double SEARCH_MM = 0.01;

    private static final double FINEST_MM = 0.04;
    private static final int FIRST_CUT = 4;
    /** Where the solid is kept out of a cylinder larger by this share of a box's motion, that is tried as a proof for it all. */
    private static final double NEARLY = 0.2;

    private static final double[] NOWHERE = new double[3];
    private static final List<double[]> LIKELY = likely();
    /** A tangent that falls faster says nothing that could be reckoned with: the edge of the circle. */
    private static final double STEEPEST = -1e6;

    enum Answer {
        FITS,
        DOES_NOT_FIT,
        UNSURE
    }

    private final TurnedSolid solid;
    private final double round;
    private final double ownAllowance;
    /** Of the cylinder that is looked into: its own, or one made larger. */
    private double allowance;

    private double radius;
    private final FarkasCertificate why = new FarkasCertificate();
    private Missing atLow = new Missing();
    private Missing atHigh = new Missing();
    private Missing between = new Missing();
    private int looks;

    private SmallPartsCylinder(TurnedSolid solid, double roundMm, double slackMm) {
        this.solid = solid;
        this.round = roundMm;
        ownAllowance = slackMm + SEARCH_MM;
    }

    /** What is missing at a shift in x, how fast that grows with the shift, and the two corners that it is between. */
    private static final class Missing {
        double shift;
        double much;
        double slope;
        int lower;
        int upper;
    }

    /**
     * @param solid what is put in
     * @param roundMm radius of a ball carried along the hull (0 for a solid with sharp edges)
     * @param slackMm by how much the cylinder is taken larger on all sides, to be on the safe side
     * @param budget most orientations looked at
     */
    static Answer test(TurnedSolid solid, double roundMm, double slackMm, int budget) {
        return new SmallPartsCylinder(solid, roundMm, slackMm).answer(budget);
    }

    private Answer answer(int budget) {
        if (likelyOrientationFits()) {
            return Answer.FITS;
        }
        // those first that nearly fit: where a solid fits by little, it is found soon
        PriorityQueue<OrientationBox> boxes = new PriorityQueue<>(Comparator.comparingDouble(OrientationBox::lacksMm));
        // The cylinder is its own mirror image front to back. A solid that is its own too, as a plate is, fits in the
        // orientation (w, i, j, k) just as in (i, w, -k, -j), and two of the four faces tell all.
        for (int face = 0; face < 4; face += solid.isItsOwnMirrorImage() ? 2 : 1) {
            boxes.addAll(OrientationBox.wholeFace(face, FIRST_CUT, solid.reach()));
        }
        boolean sure = true;
        while (!boxes.isEmpty()) {
            OrientationBox box = boxes.poll();
            double angle = box.farthestTurn();
            double moved = 2 * solid.reach() * Math.sin(angle / 2);
            solid.turnTo(box.middle());
            if (!fits(moved)) {
                continue;
            }
            if (fits(0)) {
                return Answer.FITS;
            }
            boolean fitsNearly = fits(moved * NEARLY);
            if (!fitsNearly && why.holdsWithin(angle)) {
                continue;
            }
            if (looks > budget) {
                return Answer.UNSURE;
            }
            if (moved < FINEST_MM) {
                sure = false;
            } else {
                boxes.addAll(box.halved(fitsNearly ? moved * NEARLY : moved));
            }
        }
        return sure ? Answer.DOES_NOT_FIT : Answer.UNSURE;
    }

    /** Flat, upright and slanting plates turned about their own normal: where a piece that fits mostly does. */
    private boolean likelyOrientationFits() {
        for (double[] likely : LIKELY) {
            solid.turnTo(likely);
            if (fits(0)) {
                return true;
            }
        }
        return false;
    }

    private static List<double[]> likely() {
        List<double[]> all = new ArrayList<>();
        for (int facing = 0; facing < 4; facing++) {
            for (int lean = 0; lean <= 90; lean += 15) {
                for (int turn = 0; turn < 360; turn += 6) {
                    all.add(Quaternion.after(
                            Quaternion.about(2, facing * 90),
                            Quaternion.after(Quaternion.about(1, lean), Quaternion.about(2, turn))));
                }
            }
        }
        return all;
    }

    /**
     * Whether the turned solid can be put into the cylinder made larger by some millimetres on all sides; if not,
     * {@link #why} says what keeps it out, and by how much it is kept out of the cylinder as it is.
     */
    private boolean fits(double larger) {
        looks++;
        allowance = ownAllowance + larger;
        radius = RADIUS_MM + allowance - round;
        why.begin();
        if (radius < 0) {
            why.demand(1, 0, 0, 0, NOWHERE, ownRadius());
            return false;
        }
        if (solid.length() > 2 * radius) {
            why.demand(1, 1, 0, 0, solid.farthest(1, 0, 0), ownRadius());
            why.demand(1, -1, 0, 0, solid.farthest(-1, 0, 0), ownRadius());
            return false;
        }
        if (solid.width() > 2 * radius) {
            why.demand(1, 0, 1, 0, solid.farthest(0, 1, 0), ownRadius());
            why.demand(1, 0, -1, 0, solid.farthest(0, -1, 0), ownRadius());
            return false;
        }
        if (solid.height() > height(allowance)) {
            why.demand(1, 0, 0, 1, solid.farthest(0, 0, 1), height(ownAllowance));
            why.demand(1, 0, 0, -1, solid.farthest(0, 0, -1), 0);
            return false;
        }
        // raised to the rim; then it must stand far enough on the deep side
        double bySlant = solid.highest() - solid.leastSum() - slantedRoom(allowance);
        double byWall = -radius - solid.leftMost();
        double to = radius - solid.rightMost();
        double from = Math.max(bySlant, byWall);
        if (from > to) {
            why.demand(1, 1, 0, 0, solid.farthest(1, 0, 0), ownRadius());
            holdFrom(1, bySlant > byWall);
            return false;
        }
        return roomBetween(from, to, bySlant > byWall);
    }

    private double ownRadius() {
        return RADIUS_MM + ownAllowance - round;
    }

    private double height(double allowance) {
        return DEEP_MM + 3 * allowance - 2 * round;
    }

    /** How deep the slanted bottom lets the lowest corner be under the highest, at the cylinder's axis. */
    private double slantedRoom(double allowance) {
        return BOTTOM + (ROOT_2 + 1) * (allowance - round);
    }

    /** What keeps the shift from being less: the slanted bottom, or the wall. */
    private void holdFrom(double weight, boolean bySlant) {
        if (bySlant) {
            why.demand(weight, 0, 0, 1, solid.farthest(0, 0, 1), slantedRoom(ownAllowance));
            why.demand(weight, -1, 0, -1, solid.farthest(-1, 0, -1), 0);
        } else {
            why.demand(weight, -1, 0, 0, solid.farthest(-1, 0, 0), ownRadius());
        }
    }

    /**
     * Whether some shift in x between the two leaves an interval of shifts in y. What is missing is a convex function of
     * the shift in x, so it lies above its tangents: where those of both ends cross above zero there is no room anywhere
     * between, else it is looked at there next (Kelley's cutting planes along a line).
     */
    private boolean roomBetween(double from, double to, boolean bySlant) {
        look(atLow, from);
        if (atLow.much <= 0) {
            return true;
        }
        if (atLow.slope >= 0) {
            tangent(1, atLow);
            holdFrom(atLow.slope, bySlant);
            return false;
        }
        look(atHigh, to);
        if (atHigh.much <= 0) {
            return true;
        }
        if (atHigh.slope <= 0) {
            tangent(1, atHigh);
            why.demand(-atHigh.slope, 1, 0, 0, solid.farthest(1, 0, 0), ownRadius());
            return false;
        }
        while (atHigh.shift - atLow.shift > SEARCH_MM / 10) {
            double far = atHigh.shift - atLow.shift;
            double next = atLow.shift + far / 2;
            if (atLow.slope > STEEPEST && atHigh.slope < -STEEPEST) {
                double beyond = (atHigh.much - atLow.much - atHigh.slope * far) / (atLow.slope - atHigh.slope);
                if (atLow.much + atLow.slope * beyond > 0) {
                    tangent(atHigh.slope, atLow);
                    tangent(-atLow.slope, atHigh);
                    return false;
                }
                // never so near an end that the next step would say nothing new
                double least = far / 16;
                next = atLow.shift + Math.clamp(beyond, least, far - least);
            }
            look(between, next);
            if (between.much <= 0) {
                return true;
            }
            Missing looked = between;
            if (looked.slope < 0) {
                between = atLow;
                atLow = looked;
            } else {
                between = atHigh;
                atHigh = looked;
            }
        }
        why.none();
        return false;
    }

    private void look(Missing at, double shift) {
        at.shift = shift;
        double highestLow = Double.NEGATIVE_INFINITY;
        double lowestHigh = Double.POSITIVE_INFINITY;
        double square = radius * radius;
        double[] x = solid.x();
        double[] y = solid.y();
        for (int n = 0; n < solid.seenFromAbove(); n++) {
            double aside = x[n] + shift;
            double half = Math.sqrt(Math.max(0, square - aside * aside));
            if (-y[n] - half > highestLow) {
                highestLow = -y[n] - half;
                at.lower = n;
            }
            if (half - y[n] < lowestHigh) {
                lowestHigh = half - y[n];
                at.upper = n;
            }
        }
        at.much = highestLow - lowestHigh;
        at.slope = slopeAt(x[at.lower] + shift) + slopeAt(x[at.upper] + shift);
    }

    private double halfChord(double aside) {
        return Math.sqrt(Math.max(0, radius * radius - aside * aside));
    }

    /** How fast half of a chord gets shorter; at the circle's edge without end. */
    private double slopeAt(double aside) {
        return aside / halfChord(aside);
    }

    /** Both corners lie within the circle, so on the inner side of its tangents where they would touch it. */
    private void tangent(double weight, Missing at) {
        tangent(weight, at, at.lower, -1);
        tangent(weight, at, at.upper, 1);
    }

    private void tangent(double weight, Missing at, int corner, double side) {
        double aside = solid.x()[corner] + at.shift;
        double half = halfChord(aside);
        if (!(Math.abs(weight) < -STEEPEST) || !(Math.abs(aside) < -STEEPEST * half)) {
            why.none();
            return;
        }
        why.demand(weight, aside / half, side, 0, solid.seen(corner), ownRadius() * radius / half);
    }
}
