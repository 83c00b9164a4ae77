package puzzleworkshop.camera.outline;

import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.rings.Ring;
import puzzleworkshop.camera.rings.Stretch;
import puzzleworkshop.camera.walls.Silhouette;

/**
 * The edge of a board to a fraction of a pixel. Across the coarse edge the photo's light is read along short cuts, weighed so that
 * paper counts nothing whether it is lit or shaded (the weights of red, green and blue add up to zero), and the edge is where the
 * weighed light falls fastest. Blur is even to both sides, so that place does not move with the contrast, nor with a dark side
 * wall within it: the outermost strong fall counts.
 */
final class EdgeSearch {

    private static final double REACH = 2.6;
    private static final double STEP = 0.08;
    private static final int SAMPLES = (int) (2 * REACH / STEP) + 1;

    private static final double FOLD = 6;

    /**
     * Just inside an edge there is so much of what there is of the board's colour farther in. Less is no board: a JPEG lends paper
     * some of the colour a block away, and a shadow has a tint of its own.
     */
    private static final double BOARD_INSIDE = 0.5;

    /** The same where a side faces the camera: its wall may be browner or darker than the face. */
    private static final double WALL_INSIDE = 0.25;

    /** A side wall seen narrower than this is not seen, mm. */
    private static final double WALL_SEEN = 0.2;

    /** So far inside of a fall it has come to its full height, mm. */
    private static final double FALL_WIDTH = 0.6;

    /** So far from an edge colour is whole, mm. */
    private static final double BESIDE = 0.8;

    private final Photo photo;
    private final BoardMask mask;
    private final BoardColour colour;
    private final Silhouette silhouette;

    EdgeSearch(Photo photo, BoardMask mask, Silhouette silhouette) {
        this.photo = photo;
        this.mask = mask;
        this.silhouette = silhouette;
        this.colour = new BoardColour(mask);
    }

    /**
     * An edge that was found.
     *
     * @param ring the board to its right, in mm on the plane z = 0
     * @param clear share of its points that have a clear edge
     */
    record Edge(double[] ring, double clear) {

        private Edge unfolded() {
            return new Edge(Ring.unfolded(ring, FOLD), clear);
        }
    }

    /** @param coarse ring with the board to its right, in mm on the plane z = 0 */
    Edge refined(double[] coarse) {
        // each time nearer, and with a longer stretch of edge taken together as the normals become sure
        double[] ring = Ring.spaced(Ring.smoothed(coarse, 4), Ring.SPACING);
        ring = searched(ring, REACH, 1, 0.8).unfolded().ring();
        ring = searched(Ring.spaced(Ring.smoothed(ring, 1), Ring.SPACING), 0.6 * REACH, 1, 0.5)
                .unfolded()
                .ring();
        return searched(Ring.spaced(ring, Ring.SPACING), 0.35 * REACH, 2, 0.3).unfolded();
    }

    private Edge searched(double[] ring, double reach, int together, double jump) {
        int n = Ring.size(ring);
        double[] normals = Ring.normals(ring, 3);
        double[][] cuts = new double[n][];
        for (int i = 0; i < n; i++) {
            cuts[i] = cut(ring[2 * i], ring[2 * i + 1], normals[2 * i], normals[2 * i + 1]);
        }
        Stretch stretch = new Stretch(normals, 0.97);
        double[][] falls = new double[n][];
        double[] off = new double[n];
        for (int i = 0; i < n; i++) {
            falls[i] = falls(
                    stretch.mean(cuts, i, together),
                    reach,
                    silhouette.wall(ring, normals, i) > WALL_SEEN ? WALL_INSIDE : BOARD_INSIDE);
            off[i] = falls[i].length == 0 ? Double.NaN : falls[i][0];
        }
        double[] usual = calmed(off, normals, 9, 0);
        int found = 0;
        for (int i = 0; i < n; i++) {
            // of several falls the one that goes on from its neighbours'
            for (double fall : falls[i]) {
                if (Math.abs(fall - usual[i]) < Math.abs(off[i] - usual[i])) {
                    off[i] = fall;
                }
            }
            found += Math.abs(off[i] - usual[i]) < 0.6 ? 1 : 0;
        }
        off = calmed(off, normals, 4, jump);
        double[] moved = new double[ring.length];
        for (int i = 0; i < n; i++) {
            moved[2 * i] = ring[2 * i] + off[i] * normals[2 * i];
            moved[2 * i + 1] = ring[2 * i + 1] + off[i] * normals[2 * i + 1];
        }
        return new Edge(moved, (double) found / n);
    }

    /** How much of the board's colour there is across an edge: about one on the board, none beside it. */
    double[] share(double x, double y, double nx, double ny) {
        double[] cut = cut(x, y, nx, ny);
        double inside = mean(cut, -BESIDE - 1, -BESIDE);
        double outside = mean(cut, BESIDE, BESIDE + 1);
        double drop = inside - outside;
        for (int s = 0; s < SAMPLES; s++) {
            cut[s] = drop > 0.06 ? (cut[s] - outside) / drop : 0.5;
        }
        return cut;
    }

    private static double mean(double[] cut, double from, double to) {
        int first = (int) Math.round((from + REACH) / STEP);
        int last = (int) Math.round((to + REACH) / STEP);
        double sum = 0;
        for (int s = first; s <= last; s++) {
            sum += cut[s] / (last - first + 1);
        }
        return sum;
    }

    /** Of a cut, so far along the normal, mm. */
    static double at(double[] cut, double off) {
        double place = Math.clamp((off + REACH) / STEP, 0, SAMPLES - 1.001);
        int s = (int) place;
        return cut[s] + (place - s) * (cut[s + 1] - cut[s]);
    }

    private double[] cut(double x, double y, double nx, double ny) {
        double[] white = new double[3];
        mask.paper.at(x, y, white);
        double[] weights = colour.weights(x, y);
        boolean onPaper = mask.byColour && mask.ground.isOnSheet(x, y);
        double[] cut = new double[SAMPLES];
        double[] uv = new double[2];
        double[] uv2 = new double[2];
        // the photo's coordinates are as good as linear over these few millimetres
        if (!mask.ground.seen.view().project(x - REACH * nx, y - REACH * ny, 0, uv)
                || !mask.ground.seen.view().project(x + REACH * nx, y + REACH * ny, 0, uv2)) {
            return cut;
        }
        double[] light = new double[3];
        for (int s = 0; s < SAMPLES; s++) {
            double t = (double) s / (SAMPLES - 1);
            PaperLight.against(white, photo, uv[0] + t * (uv2[0] - uv[0]), uv[1] + t * (uv2[1] - uv[1]), light);
            if (onPaper) {
                colour.untint(light);
            }
            double level = (light[0] + light[1] + light[2]) / 3;
            for (int c = 0; c < 3; c++) {
                light[c] = BoardColour.code(light[c]);
            }
            double board = (weights[0] * light[0] + weights[1] * light[1] + weights[2] * light[2]) / weights[3];
            if (onPaper) {
                // JPEG lends paper the opposite colour beside an edge; that is no edge of its own
                board = Math.max(0, Math.min(board, colour.darkness(level)));
                double along = (t * 2 - 1) * REACH;
                if (level < BoardColour.BURNT && isBlank(x + along * nx, y + along * ny)) {
                    // a burnt side wall has no colour left, but is darker than any shadow
                    board = Math.max(board, Math.min(1, (BoardColour.BURNT - level) / BoardColour.BURNT));
                }
            }
            cut[s] = board;
        }
        return cut;
    }

    /** Whether no ink is printed there. */
    private boolean isBlank(double x, double y) {
        int cell = mask.ground.cell(x, y);
        return cell >= 0 && mask.ground.kind[cell] == Ground.Kind.PAPER;
    }

    /**
     * Where a cut falls fast, from the outside in; nothing where nothing falls clearly.
     *
     * @param least share of the whole drop that a fall comes from
     */
    private static double[] falls(double[] cut, double reach, double least) {
        int first = (int) ((REACH - reach) / STEP);
        int smooth = 1;
        double[] slope = new double[SAMPLES];
        double steepest = 0;
        for (int s = first + smooth; s < SAMPLES - first - smooth; s++) {
            double before = 0;
            double after = 0;
            for (int i = 1; i <= smooth + 1; i++) {
                before += cut[Math.max(0, s - i)];
                after += cut[Math.min(SAMPLES - 1, s + i)];
            }
            slope[s] = (before - after) / (smooth + 1);
            steepest = Math.max(steepest, slope[s]);
        }
        double inside = 0;
        double outside = 0;
        for (int s = 0; s < 10; s++) {
            inside += cut[first + s] / 10;
            outside += cut[SAMPLES - 1 - first - s] / 10;
        }
        double drop = inside - outside;
        if (steepest <= 0 || drop <= 0.06 || steepest < 0.08 * drop) {
            return new double[0];
        }
        double[] found = new double[4];
        int count = 0;
        for (int s = SAMPLES - first - smooth - 2; s > first + smooth && count < found.length; s--) {
            if (slope[s] > 0.3 * steepest
                    && slope[s] >= slope[s - 1]
                    && slope[s] > slope[s + 1]
                    && highest(cut, s) - outside > least * drop) {
                found[count++] = peak(slope, s) * STEP - REACH;
            }
        }
        return java.util.Arrays.copyOf(found, count);
    }

    private static double highest(double[] cut, int fall) {
        double highest = cut[fall];
        for (int s = fall; s >= Math.max(0, fall - (int) (FALL_WIDTH / STEP)); s--) {
            highest = Math.max(highest, cut[s]);
        }
        return highest;
    }

    /** The middle of a peak, by the weight of what rises above six tenths of it. */
    private static double peak(double[] slope, int top) {
        double limit = 0.6 * slope[top];
        double weight = 0;
        double moment = 0;
        for (int i = top; i > 0 && slope[i] > limit; i--) {
            weight += slope[i] - limit;
            moment += (slope[i] - limit) * i;
        }
        for (int i = top + 1; i < SAMPLES && slope[i] > limit; i++) {
            weight += slope[i] - limit;
            moment += (slope[i] - limit) * i;
        }
        return moment / weight;
    }

    /** Medians around each point instead of what is missing or farther from them than allowed. */
    private static double[] calmed(double[] off, double[] normals, int wide, double allowed) {
        int n = off.length;
        double[] kept = off.clone();
        Stretch stretch = new Stretch(normals, 0.85);
        for (int i = 0; i < n; i++) {
            double middle = stretch.median(off, i, wide, 3);
            if (!(Math.abs(off[i] - middle) < allowed)) {
                kept[i] = Double.isFinite(middle) ? middle : Double.isFinite(off[i]) ? off[i] : 0;
            }
        }
        return kept;
    }
}
