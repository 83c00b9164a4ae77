package puzzleworkshop.pattern.smallparts;

/**
 * Whether a solid has room in the small-parts cylinder as it is turned just now, and if not, for which turns nearby the same
 * reason holds. Asked hundreds of thousands of times for one piece, so it keeps its figures in place.
 */
final class CylinderRoom {

    private static final double ROOT_2 = Math.sqrt(2);
    private static final double BOTTOM = SmallPartsCylinder.SHALLOW_MM + SmallPartsCylinder.RADIUS_MM;
    /** The search along one line stops this close to its best; the cylinder is taken larger by it. */
    private static final double SEARCH_MM = 0.01;
    /** A tangent that falls faster says nothing that could be reckoned with: the edge of the circle. */
    private static final double STEEPEST = -1e6;

    /** What kept the solid out the last time it was asked. */
    private enum KeptOut {
        BY_ROUNDNESS,
        BY_LENGTH,
        BY_WIDTH,
        BY_HEIGHT,
        BY_BOTTOM_AND_WALL,
        NEARER_IS_BETTER_BUT_FORBIDDEN,
        FARTHER_IS_BETTER_BUT_FORBIDDEN,
        BETWEEN_TANGENTS,
        UNPROVEN
    }

    /** What is missing at a shift in x, how fast that grows with the shift, and the two corners that it is between. */
    private static final class Missing {
        double shift;
        double much;
        double slope;
        int lower;
        int upper;
    }

    private final TurnedSolid solid;
    private final double round;
    private final double ownAllowance;
    private final FarkasCertificate why = new FarkasCertificate();
    /** Of the cylinder that is looked into: its own, or one made larger. */
    private double allowance;

    private double radius;
    private KeptOut keptOut = KeptOut.UNPROVEN;
    private boolean bySlant;
    private Missing atLow = new Missing();
    private Missing atHigh = new Missing();
    private Missing between = new Missing();
    private int looks;

    /**
     * @param roundMm radius of a ball carried along the solid's hull
     * @param slackMm by how much the cylinder is taken larger on all sides
     */
    CylinderRoom(TurnedSolid solid, double roundMm, double slackMm) {
        this.solid = solid;
        this.round = roundMm;
        ownAllowance = slackMm + SEARCH_MM;
    }

    /** How often it was asked. */
    int looks() {
        return looks;
    }

    /** Whether the solid can be put into the cylinder made larger by some millimetres on all sides. */
    boolean fits(double larger) {
        looks++;
        allowance = ownAllowance + larger;
        radius = SmallPartsCylinder.RADIUS_MM + allowance - round;
        if (radius < 0) {
            return not(KeptOut.BY_ROUNDNESS);
        }
        if (solid.length() > 2 * radius) {
            return not(KeptOut.BY_LENGTH);
        }
        if (solid.width() > 2 * radius) {
            return not(KeptOut.BY_WIDTH);
        }
        if (solid.height() > height(allowance)) {
            return not(KeptOut.BY_HEIGHT);
        }
        // raised to the rim; then it must stand far enough on the deep side
        double slanted = solid.highest() - solid.leastSum() - slantedRoom(allowance);
        double wall = -radius - solid.leftMost();
        bySlant = slanted > wall;
        double from = Math.max(slanted, wall);
        double to = radius - solid.rightMost();
        return from <= to ? roomBetween(from, to) : not(KeptOut.BY_BOTTOM_AND_WALL);
    }

    private boolean not(KeptOut reason) {
        keptOut = reason;
        return false;
    }

    /**
     * Whether what kept the solid out the last time keeps it out of the cylinder as it is, not made larger, in every turn by
     * less than an angle from this one.
     *
     * @param angle in radians
     */
    boolean isKeptOutWithin(double angle) {
        why.begin();
        switch (keptOut) {
            case BY_ROUNDNESS -> why.demand(1, 0, 0, 0, new double[3], ownRadius());
            case BY_LENGTH -> {
                holdTo(1);
                why.demand(1, -1, 0, 0, solid.farthest(-1, 0, 0), ownRadius());
            }
            case BY_WIDTH -> {
                why.demand(1, 0, 1, 0, solid.farthest(0, 1, 0), ownRadius());
                why.demand(1, 0, -1, 0, solid.farthest(0, -1, 0), ownRadius());
            }
            case BY_HEIGHT -> {
                why.demand(1, 0, 0, 1, solid.farthest(0, 0, 1), height(ownAllowance));
                why.demand(1, 0, 0, -1, solid.farthest(0, 0, -1), 0);
            }
            case BY_BOTTOM_AND_WALL -> {
                holdTo(1);
                holdFrom(1);
            }
            case NEARER_IS_BETTER_BUT_FORBIDDEN -> {
                tangent(1, atLow);
                holdFrom(atLow.slope);
            }
            case FARTHER_IS_BETTER_BUT_FORBIDDEN -> {
                tangent(1, atHigh);
                holdTo(-atHigh.slope);
            }
            case BETWEEN_TANGENTS -> {
                tangent(atHigh.slope, atLow);
                tangent(-atLow.slope, atHigh);
            }
            case UNPROVEN -> why.none();
        }
        return why.holdsWithin(angle);
    }

    private double ownRadius() {
        return SmallPartsCylinder.RADIUS_MM + ownAllowance - round;
    }

    private double height(double allowance) {
        return SmallPartsCylinder.DEEP_MM + 3 * allowance - 2 * round;
    }

    /** How deep the slanted bottom lets the lowest corner be under the highest, at the cylinder's axis. */
    private double slantedRoom(double allowance) {
        return BOTTOM + (ROOT_2 + 1) * (allowance - round);
    }

    /** What keeps the shift from being less: the slanted bottom, or the wall. */
    private void holdFrom(double weight) {
        if (bySlant) {
            why.demand(weight, 0, 0, 1, solid.farthest(0, 0, 1), slantedRoom(ownAllowance));
            why.demand(weight, -1, 0, -1, solid.farthest(-1, 0, -1), 0);
        } else {
            why.demand(weight, -1, 0, 0, solid.farthest(-1, 0, 0), ownRadius());
        }
    }

    /** What keeps it from being more: the wall. */
    private void holdTo(double weight) {
        why.demand(weight, 1, 0, 0, solid.farthest(1, 0, 0), ownRadius());
    }

    /**
     * Whether some shift in x between the two leaves an interval of shifts in y. What is missing is a convex function of
     * the shift in x, so it lies above its tangents: where those of both ends cross above zero there is no room anywhere
     * between, else it is looked at there next (Kelley's cutting planes along a line).
     */
    private boolean roomBetween(double from, double to) {
        look(atLow, from);
        if (atLow.much <= 0) {
            return true;
        }
        if (atLow.slope >= 0) {
            return not(KeptOut.NEARER_IS_BETTER_BUT_FORBIDDEN);
        }
        look(atHigh, to);
        if (atHigh.much <= 0) {
            return true;
        }
        if (atHigh.slope <= 0) {
            return not(KeptOut.FARTHER_IS_BETTER_BUT_FORBIDDEN);
        }
        while (atHigh.shift - atLow.shift > SEARCH_MM / 10) {
            double far = atHigh.shift - atLow.shift;
            double next = atLow.shift + far / 2;
            if (atLow.slope > STEEPEST && atHigh.slope < -STEEPEST) {
                double beyond = (atHigh.much - atLow.much - atHigh.slope * far) / (atLow.slope - atHigh.slope);
                if (atLow.much + atLow.slope * beyond > 0) {
                    return not(KeptOut.BETWEEN_TANGENTS);
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
        return not(KeptOut.UNPROVEN);
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
