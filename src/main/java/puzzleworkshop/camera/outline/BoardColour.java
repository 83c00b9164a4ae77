package puzzleworkshop.camera.outline;

/** What makes light look like board and not like what lies below: weights of red, green and blue, and the colour of shadow. */
final class BoardColour {

    /** Of colours less saturated than this (in code values) shade may be the same: only what is darker than any shadow is told. */
    private static final double GREY = 0.09;

    /** Light against white paper below which nothing is a shadow. */
    static final double BURNT = 0.22;

    /** A grey face must be this dark to be told from shaded paper. */
    private static final double DARK = 0.14;

    /** So much must a face differ from a cloth below it, in code values. */
    private static final double LEAST_DIFFERENCE = 0.1;

    /** How far inside an edge its own colour is read, mm: beyond side walls and blur. */
    private static final double[] INSIDE = {-1.4, -1.9, -2.4, -2.9};

    /** A face darker than this is far from paper by its darkness as well, light against white paper. */
    private static final double DARK_FACE = 0.2;

    private static final double[] NOTHING = {0, 0, 0, 1};

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

    /**
     * What board has more than the backdrop; on paper without its mean, so that shade counts nothing. Of a picture each place has its
     * own, read a little inside along the normal.
     */
    double[] weights(double x, double y, double nx, double ny) {
        return mask.varied ? weightsOfPicture(x, y, nx, ny) : weights(x, y, mask.wood);
    }

    private double[] weights(double x, double y, double[] face) {
        double[] w = new double[3];
        for (int c = 0; c < 3; c++) {
            w[c] = code(face[c]);
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

    private static double size(double[] w) {
        return Math.sqrt(w[0] * w[0] + w[1] * w[1] + w[2] * w[2]);
    }

    /** All nothing where the face cannot be told from what lies below. */
    private double[] weightsOfPicture(double x, double y, double nx, double ny) {
        double[] face = new double[3];
        double[] white = new double[3];
        int read = 0;
        for (double off : INSIDE) {
            int cell = mask.ground.cell(x + off * nx, y + off * ny);
            if (cell >= 0 && mask.board[cell]) {
                mask.paper.at(mask.ground.x(cell), mask.ground.y(cell), white);
                for (int c = 0; c < 3; c++) {
                    face[c] += mask.ground.light[c][cell] / white[c];
                }
                read++;
            }
        }
        if (read == 0) {
            return weights(x, y, mask.wood);
        }
        for (int c = 0; c < 3; c++) {
            face[c] /= read;
        }
        double[] weights = weights(x, y, face);
        if (!mask.ground.isOnSheet(x, y)) {
            return weights[3] < LEAST_DIFFERENCE ? NOTHING : weights;
        }
        double level = (face[0] + face[1] + face[2]) / 3;
        // what is darker than any shadow is told by that alone, see EdgeSearch
        boolean told = mask.byColour ? weights[3] >= GREY : level < DARK;
        return told ? weights : NOTHING;
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
