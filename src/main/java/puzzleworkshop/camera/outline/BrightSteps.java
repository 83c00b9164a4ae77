package puzzleworkshop.camera.outline;

import java.util.Arrays;

/**
 * Where brightness steps across the cuts through an edge, and which step of each cut is the edge: of each one is taken, or none, so
 * that altogether they lie where colour changes, step strongly, and go on from their neighbours' (Viterbi's method, 1967, around the
 * ring). Grain in the wood, ink, the rim of a shadow and the seams of sharpening step as well, but not all of that at once.
 */
final class BrightSteps {

    private static final int MOST_STEPS = 6;

    /** Brightness against white paper below which nothing is a step. */
    private static final double LEAST_STEP = 0.03;

    private static final double CLEAR_STEP = 0.2;

    /** Cost of taking no step. */
    private static final double NOTHING = 3;

    /** Pixels that a step of the photo's own blur is wide; light that fades in a shadow is wider. */
    private static final double WIDEST = 3.2;

    /** Paper is brighter than wood, but in deep shadow. */
    private static final double FALLING = 0.7;

    /** Ink steps as well. */
    private static final double PRINTED = 2.5;

    private static final double SEAM = 3;

    /** The top of a burnt wall is not where the board ends as seen: its foot is. */
    private static final double WALL = 4;

    /** Sharpening gives back a third of a step at most. */
    private static final double RISE = 0.34;

    private static final double TURNED = 2;

    private static final double MOST_COLOUR = 6;

    /** So many pixels beside a step its colour is read. */
    private static final double BESIDE = 2.2;

    private static final double MOST_JUMP = 5;

    private final BoardMask mask;

    /** Pixels for a mm. */
    private final double scale;

    BrightSteps(BoardMask mask, double scale) {
        this.mask = mask;
        this.scale = scale;
    }

    /**
     * One step of brightness across a cut.
     *
     * @param off where, mm outwards
     * @param size by how much it rises outwards, of white paper's
     * @param cost of taking it
     */
    record Step(double off, double size, double cost) {}

    /**
     * Places where brightness steps up or down, at most {@link #MOST_STEPS}, the cheapest.
     *
     * @param cut brightness from the inside out, of white paper's
     * @param step between its samples, mm
     * @param colour how much of the board's colour there is ({@link EdgeSearch#share}), or null where the edge is known well
     * @param at place and normal of the cut
     */
    Step[] of(double[] cut, double step, double[] colour, double[] at) {
        int half = cut.length / 2;
        int n = cut.length;
        double[] slope = new double[n];
        for (int s = 1; s < n - 1; s++) {
            slope[s] = (cut[s + 1] - cut[s - 1]) / 2;
        }
        Step[] found = new Step[n];
        int count = 0;
        for (int s = 2; s < n - 2; s++) {
            double here = Math.abs(slope[s]);
            if (here < Math.abs(slope[s - 1]) || here <= Math.abs(slope[s + 1])) {
                continue;
            }
            double limit = 0.5 * here;
            double weight = 0;
            double moment = 0;
            double total = 0;
            for (int way = -1; way <= 1; way += 2) {
                for (int i = way < 0 ? s : s + 1; i >= 0 && i < n && slope[i] * slope[s] > 0; i += way) {
                    double size = Math.abs(slope[i]);
                    if (size < 0.2 * here || size > 1.05 * here) {
                        break;
                    }
                    total += size;
                    if (size > limit) {
                        weight += size - limit;
                        moment += (size - limit) * i;
                    }
                }
            }
            if (total < LEAST_STEP || weight <= 0) {
                continue;
            }
            double off = (moment / weight - half) * step;
            double wide = total / here * step * scale;
            double cost =
                    -Math.log(Math.clamp(total / CLEAR_STEP, 0.1, 1)) + Math.pow(Math.max(0, wide - WIDEST) / 0.7, 2);
            cost += slope[s] < 0 ? FALLING : 0;
            cost += isPrinted(at[0] + off * at[2], at[1] + off * at[3]) ? PRINTED : 0;
            if (colour != null) {
                // beyond the edge there is no colour left, before it there is: a wall is no paper yet, a shadow no wood
                double beyond = Math.max(0, EdgeSearch.at(colour, off + BESIDE / scale) - 0.3) / 0.15;
                double before = Math.max(0, 0.25 - EdgeSearch.at(colour, off - BESIDE / scale)) / 0.12;
                cost += Math.min(MOST_COLOUR, beyond * beyond + before * before) + Math.pow(off * scale / 2, 2);
            } else {
                cost += Math.pow(off * scale / 0.8, 2);
            }
            found[count++] = new Step(off, slope[s] < 0 ? -total : total, cost);
        }
        double[] more = new double[count];
        boolean[] isFoot = new boolean[count];
        for (int i = 0; i < count; i++) {
            int foot = footOfWall(found[i], found, count, cut, step);
            if (foot >= 0) {
                more[i] += WALL;
                isFoot[foot] = true;
            }
        }
        for (int i = 0; i < count; i++) {
            // what rises at the foot of a wall is no seam of the fall at its top
            more[i] += !isFoot[i] && isSeam(found[i], found, count) ? SEAM : 0;
        }
        for (int i = 0; i < count; i++) {
            found[i] = new Step(found[i].off, found[i].size, found[i].cost + more[i]);
        }
        Arrays.sort(found, 0, count, (a, b) -> Double.compare(a.cost, b.cost));
        return Arrays.copyOf(found, Math.min(count, MOST_STEPS));
    }

    private boolean isPrinted(double x, double y) {
        int cell = mask.ground.cell(x, y);
        return cell >= 0
                && (mask.ground.kind[cell] == Ground.Kind.PRINTED || mask.ground.kind[cell] == Ground.Kind.MARKER);
    }

    /** Whether a step only goes back what a strong one beside it went too far: sharpening leaves a bright and a dark seam. */
    private boolean isSeam(Step step, Step[] all, int count) {
        for (int i = 0; i < count; i++) {
            if (all[i].size * step.size < 0
                    && Math.abs(all[i].size) > 2.5 * Math.abs(step.size)
                    && Math.abs(all[i].off - step.off) * scale < 4) {
                return true;
            }
        }
        return false;
    }

    /**
     * Where brightness falls to what is darker than any shadow, and rises again just outside of that by more than sharpening does:
     * the index of that rise, or −1.
     */
    private static int footOfWall(Step step, Step[] all, int count, double[] cut, double width) {
        for (int i = 0; i < count && step.size < 0; i++) {
            if (all[i].off > step.off && all[i].size > -RISE * step.size) {
                double darkest = Double.MAX_VALUE;
                for (int s = index(step.off, cut, width); s <= index(all[i].off, cut, width); s++) {
                    darkest = Math.min(darkest, cut[s]);
                }
                return darkest < BoardColour.BURNT ? i : -1;
            }
        }
        return -1;
    }

    private static int index(double off, double[] cut, double width) {
        return Math.clamp(Math.round(off / width) + cut.length / 2, 0, cut.length - 1);
    }

    /** The step taken of each cut, −1 for none. */
    int[] taken(Step[][] steps, double[] normals) {
        int n = steps.length;
        int start = 0;
        double cheapest = Double.MAX_VALUE;
        for (int i = 0; i < n; i++) {
            if (steps[i].length > 0 && steps[i][0].cost < cheapest) {
                cheapest = steps[i][0].cost;
                start = i;
            }
        }
        int[][] from = new int[n][MOST_STEPS + 1];
        double[] cost = new double[MOST_STEPS + 1];
        Arrays.fill(cost, Double.MAX_VALUE / 4);
        cost[steps[start].length == 0 ? MOST_STEPS : 0] = 0;
        for (int k = 1; k <= n; k++) {
            int i = (start + k) % n;
            int before = (start + k - 1) % n;
            double along = normals[2 * i] * normals[2 * before] + normals[2 * i + 1] * normals[2 * before + 1];
            // around a corner offsets need not go on
            double stiff = along > 0.97 ? 1 : 0.15;
            double[] next = new double[MOST_STEPS + 1];
            Arrays.fill(next, Double.MAX_VALUE / 4);
            for (int b = 0; b <= MOST_STEPS; b++) {
                if (b < MOST_STEPS && b >= steps[i].length) {
                    continue;
                }
                for (int a = 0; a <= MOST_STEPS; a++) {
                    if (a < MOST_STEPS && a >= steps[before].length) {
                        continue;
                    }
                    double jump = a == MOST_STEPS || b == MOST_STEPS
                            ? 0
                            : Math.pow((steps[before][a].off - steps[i][b].off) * scale / 0.7, 2)
                                    + (steps[before][a].size * steps[i][b].size < 0 ? TURNED : 0);
                    double now = cost[a]
                            + stiff * Math.min(MOST_JUMP, jump)
                            + (b == MOST_STEPS ? NOTHING : steps[i][b].cost);
                    if (now < next[b]) {
                        next[b] = now;
                        from[i][b] = a;
                    }
                }
            }
            cost = next;
        }
        int[] taken = new int[n];
        int at = steps[start].length == 0 ? MOST_STEPS : 0;
        for (int k = n; k >= 1; k--) {
            int i = (start + k) % n;
            taken[i] = at == MOST_STEPS ? -1 : at;
            at = from[i][at];
        }
        return taken;
    }
}
