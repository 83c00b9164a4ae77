package puzzleworkshop.camera.outline;

/** What makes light look like board and not like what lies below: weights of red, green and blue, and the colour of shadow. */
final class BoardColour {

    /** Light against white paper below which nothing is a shadow. */
    static final double BURNT = 0.22;

    /** A face darker than this is far from paper by its darkness as well, light against white paper. */
    private static final double DARK_FACE = 0.2;

    /** Code value that keeps the noise of black from looking like colour. */
    private static final double DARKEST = 0.08;

    private final BoardMask mask;

    BoardColour(BoardMask mask) {
        this.mask = mask;
    }

    /**
     * As code values are, near enough. Cameras and JPEG blur colour in these, evenly to both sides of an edge; in light the blurred
     * colour of dark wood would reach far into bright paper.
     */
    static double code(double light) {
        return Math.sqrt(Math.max(0, light));
    }

    /** Takes the colour of shadow out, so that shaded paper is as white as lit paper, only darker. */
    void untint(double[] light) {
        double level = Math.log((light[0] + light[1] + light[2]) / 3 + 0.02);
        if (level >= 0) {
            return;
        }
        double shade = Math.max(-1.4, level);
        double red = (mask.tintRedBlue + mask.tintRedGreen) / 3;
        light[0] *= Math.exp(-red * shade);
        light[1] *= Math.exp(-(red - mask.tintRedGreen) * shade);
        light[2] *= Math.exp(-(red - mask.tintRedBlue) * shade);
    }

    /**
     * As how much board a place on paper counts by its darkness, at most: about one on a dark face, a third in an ordinary shadow.
     * Where lamp and window differ in colour a shadow may be as brown as dark wood, but not as dark. No bound for lighter faces.
     */
    double darkness(double level) {
        double face = (mask.wood[0] + mask.wood[1] + mask.wood[2]) / 3;
        return mask.varied || face > DARK_FACE ? Double.POSITIVE_INFINITY : (1 - code(level)) / (1 - code(face));
    }

    /** What board has more than the backdrop; on paper without its mean, so that shade counts nothing. */
    double[] weights(double x, double y) {
        double[] w = new double[3];
        for (int c = 0; c < 3; c++) {
            w[c] = code(mask.wood[c]);
        }
        if (mask.ground.isOnSheet(x, y)) {
            if (!mask.byColour) {
                return new double[] {-1 / 3.0, -1 / 3.0, -1 / 3.0, 1 - (w[0] + w[1] + w[2]) / 3};
            }
            double mean = (w[0] + w[1] + w[2]) / 3;
            for (int c = 0; c < 3; c++) {
                w[c] -= mean;
            }
        } else {
            double[] below = tableLight();
            for (int c = 0; c < 3; c++) {
                w[c] -= code(below[c]);
            }
        }
        double size = size(w);
        for (int c = 0; c < 3; c++) {
            w[c] /= Math.max(1e-6, size);
        }
        // with the last one a board's face counts one
        return new double[] {w[0], w[1], w[2], Math.max(1e-6, size)};
    }

    /**
     * How strong the board's colour is against its own brightness: the same in light and shade, none on paper whether lit or shaded.
     * Of boards without colour: how dark.
     *
     * @param light against white paper; changed
     */
    double strength(double[] light, double x, double y) {
        untint(light);
        double[] w = weights(x, y);
        double sum = mask.byColour ? 0 : 1;
        double bright = 0;
        for (int c = 0; c < 3; c++) {
            double code = code(light[c]);
            sum += w[c] * code;
            bright += code / 3;
        }
        return mask.byColour ? sum / (bright + DARKEST) : sum / w[3];
    }

    private static double size(double[] w) {
        return Math.sqrt(w[0] * w[0] + w[1] * w[1] + w[2] * w[2]);
    }

    private double[] tableLight() {
        double[] sum = new double[3];
        for (Backdrop.Cluster cluster : mask.backdrop.table) {
            double level = cluster.mean()[0];
            double red = level + (cluster.mean()[1] + cluster.mean()[2]) / 3;
            sum[0] += Math.exp(red) / mask.backdrop.table.size();
            sum[1] += Math.exp(red - cluster.mean()[2]) / mask.backdrop.table.size();
            sum[2] += Math.exp(red - cluster.mean()[1]) / mask.backdrop.table.size();
        }
        return sum;
    }
}
