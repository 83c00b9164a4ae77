package puzzleworkshop.camera.sheet;

import puzzleworkshop.camera.Photo;

/**
 * Corners of a marker to a few hundredths of a pixel. Along each side, cuts across it find where the light is half way between
 * black and white; a line is laid through them, and two lines meet in the corner. In light, not in sRGB values: blur mixes light,
 * and half way in sRGB lies a third of a pixel inside the black.
 */
final class MarkerEdges {

    private static final int CUTS = 16;
    private static final int FIELDS = MarkerFinder.FIELDS;
    private static final double FIRST = 0.12;

    private MarkerEdges() {}

    /** The same corners, better; those of a side that shows no clear edge stay as they were. */
    static double[] refined(Photo photo, double[] corners) {
        double[][] lines = new double[4][];
        for (int side = 0; side < 4; side++) {
            int next = (side + 1) % 4;
            lines[side] =
                    line(photo, corners[2 * side], corners[2 * side + 1], corners[2 * next], corners[2 * next + 1]);
        }
        double[] better = corners.clone();
        for (int corner = 0; corner < 4; corner++) {
            double[] a = lines[(corner + 3) % 4];
            double[] b = lines[corner];
            if (a == null || b == null) {
                continue;
            }
            double det = a[0] * b[1] - a[1] * b[0];
            if (Math.abs(det) < 0.2) {
                continue;
            }
            double x = (a[2] * b[1] - a[1] * b[2]) / det;
            double y = (a[0] * b[2] - a[2] * b[0]) / det;
            if (Math.hypot(x - corners[2 * corner], y - corners[2 * corner + 1]) < 4) {
                better[2 * corner] = x;
                better[2 * corner + 1] = y;
            }
        }
        return better;
    }

    /** How wide the edges of a marker are blurred, from a fifth to four fifths of the way, in pixels. */
    static double blur(Photo photo, double[] corners) {
        double[] widths = new double[4];
        for (int side = 0; side < 4; side++) {
            int next = (side + 1) % 4;
            double dx = corners[2 * next] - corners[2 * side];
            double dy = corners[2 * next + 1] - corners[2 * side + 1];
            double length = Math.hypot(dx, dy);
            double reach = length / FIELDS;
            double[] light = new double[41];
            for (int i = 0; i < light.length; i++) {
                double d = reach * (i - 20) / 20.0;
                double[] sum = new double[3];
                photo.addLight(
                        corners[2 * side] + 0.5 * dx + d * dy / length,
                        corners[2 * side + 1] + 0.5 * dy - d * dx / length,
                        1,
                        sum);
                light[i] = sum[0] + sum[1] + sum[2];
            }
            double black = light[0];
            double white = light[40];
            int between = 0;
            for (double l : light) {
                between += l > black + 0.2 * (white - black) && l < black + 0.8 * (white - black) ? 1 : 0;
            }
            widths[side] = between * reach / 20;
        }
        java.util.Arrays.sort(widths);
        return widths[1];
    }

    /** a, b, c of a·x + b·y = c through the edge, or null. Corners run clockwise, so white lies to the left of the way. */
    private static double[] line(Photo photo, double x1, double y1, double x2, double y2) {
        double length = Math.hypot(x2 - x1, y2 - y1);
        double nx = (y2 - y1) / length;
        double ny = -(x2 - x1) / length;
        double reach = Math.clamp(length / 10, 2, 6);
        double[] xs = new double[CUTS];
        double[] ys = new double[CUTS];
        int found = 0;
        for (int i = 0; i < CUTS; i++) {
            double s = FIRST + (1 - 2 * FIRST) * i / (CUTS - 1);
            double x = x1 + s * (x2 - x1);
            double y = y1 + s * (y2 - y1);
            double d = crossing(photo, x, y, nx, ny, reach);
            if (Double.isFinite(d)) {
                xs[found] = x + d * nx;
                ys[found] = y + d * ny;
                found++;
            }
        }
        return found < CUTS / 2 ? null : fitted(xs, ys, found, nx, ny);
    }

    private static double[] fitted(double[] xs, double[] ys, int n, double nx, double ny) {
        boolean[] out = new boolean[n];
        double[] line = null;
        for (int round = 0; round < 3; round++) {
            double mx = 0;
            double my = 0;
            int used = 0;
            for (int i = 0; i < n; i++) {
                if (!out[i]) {
                    mx += xs[i];
                    my += ys[i];
                    used++;
                }
            }
            mx /= used;
            my /= used;
            double along = 0;
            double across = 0;
            // along the side, (−ny, nx); the line's slope against it
            for (int i = 0; i < n; i++) {
                if (!out[i]) {
                    double t = -ny * (xs[i] - mx) + nx * (ys[i] - my);
                    double d = nx * (xs[i] - mx) + ny * (ys[i] - my);
                    along += t * t;
                    across += t * d;
                }
            }
            double slope = along > 0 ? across / along : 0;
            double a = nx + slope * ny;
            double b = ny - slope * nx;
            double norm = Math.hypot(a, b);
            line = new double[] {a / norm, b / norm, (a * mx + b * my) / norm};
            int left = 0;
            for (int i = 0; i < n; i++) {
                out[i] = Math.abs(line[0] * xs[i] + line[1] * ys[i] - line[2]) > 0.6;
                left += out[i] ? 0 : 1;
            }
            if (left < n / 2) {
                return null;
            }
        }
        return line;
    }

    /** How far along the normal (from black to white) the light is half way; not a number where there is no such edge. */
    private static double crossing(Photo photo, double x, double y, double nx, double ny, double reach) {
        double step = 0.5;
        int n = (int) Math.round(2 * reach / step) + 1;
        double[] light = new double[n];
        for (int i = 0; i < n; i++) {
            double d = -reach + i * step;
            double[] sum = new double[3];
            photo.addLight(x + d * nx, y + d * ny, 1, sum);
            light[i] = sum[0] + sum[1] + sum[2];
        }
        int third = n / 4;
        double black = 0;
        double white = 0;
        for (int i = 0; i < third; i++) {
            black += light[i] / third;
            white += light[n - 1 - i] / third;
        }
        if (white < 0.06 || white < 1.8 * black) {
            return Double.NaN;
        }
        double half = (black + white) / 2;
        double best = Double.NaN;
        for (int i = 1; i < n; i++) {
            if (light[i - 1] < half && light[i] >= half) {
                double d = -reach + (i - 1 + (half - light[i - 1]) / (light[i] - light[i - 1])) * step;
                if (!(Math.abs(d) >= Math.abs(best))) {
                    best = d;
                }
            }
        }
        return best;
    }
}
