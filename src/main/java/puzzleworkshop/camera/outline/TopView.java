package puzzleworkshop.camera.outline;

import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.model.View;

/** The photo as the tops of what lies there are seen from straight above: all of one thickness, so their true size. */
public final class TopView {

    /** Side of a cell, mm. */
    static final double STEP = 0.125;

    /** So many cells are projected at once: over them the view is as good as linear. */
    private static final int BLOCK = 16;

    private final Photo photo;
    private final View view;
    private final PaperLight paper;
    private final double thickness;
    private final double printScale;

    TopView(Photo photo, View view, PaperLight paper, double thickness, double printScale) {
        this.photo = photo;
        this.view = view;
        this.paper = paper;
        this.thickness = thickness;
        this.printScale = printScale;
    }

    /**
     * A part of it: light against white paper, as code values are (square roots), red, green and blue.
     *
     * @param left in mm
     * @param top in mm
     * @param code the three of each cell in turn, row by row
     */
    public record Patch(double left, double top, int columns, int rows, float[] code) {

        /** At places between cells, count of them in a straight line: three numbers for each into out. */
        public void along(double x, double y, double dx, double dy, int count, double[] out) {
            double c0 = (x - left) / STEP;
            double r0 = (y - top) / STEP;
            double dc = dx / STEP;
            double dr = dy / STEP;
            double lastColumn = columns - 1.001;
            double lastRow = rows - 1.001;
            for (int i = 0; i < count; i++) {
                double c = Math.min(Math.max(c0 + i * dc, 0), lastColumn);
                double r = Math.min(Math.max(r0 + i * dr, 0), lastRow);
                int column = (int) c;
                int row = (int) r;
                double fx = c - column;
                double fy = r - row;
                int at = 3 * (row * columns + column);
                int below = at + 3 * columns;
                for (int k = 0; k < 3; k++) {
                    double upper = code[at + k] + fx * (code[at + 3 + k] - code[at + k]);
                    double lower = code[below + k] + fx * (code[below + 3 + k] - code[below + k]);
                    out[3 * i + k] = upper + fy * (lower - upper);
                }
            }
        }
    }

    public Patch patch(double left, double top, double right, double bottom) {
        int columns = (int) Math.ceil((right - left) / STEP) + 1;
        int rows = (int) Math.ceil((bottom - top) / STEP) + 1;
        float[] code = new float[3 * columns * rows];
        double[] white = new double[3];
        paper.at((left + right) / 2 / printScale, (top + bottom) / 2 / printScale, white);
        double[][] corners = new double[4][2];
        double[] light = new double[3];
        for (int r0 = 0; r0 < rows; r0 += BLOCK) {
            for (int c0 = 0; c0 < columns; c0 += BLOCK) {
                for (int k = 0; k < 4; k++) {
                    view.project(
                            (left + (c0 + k % 2 * BLOCK) * STEP) / printScale,
                            (top + (r0 + k / 2 * BLOCK) * STEP) / printScale,
                            -thickness,
                            corners[k]);
                }
                for (int r = r0; r < Math.min(rows, r0 + BLOCK); r++) {
                    double fy = (double) (r - r0) / BLOCK;
                    for (int c = c0; c < Math.min(columns, c0 + BLOCK); c++) {
                        double fx = (double) (c - c0) / BLOCK;
                        light[0] = 0;
                        light[1] = 0;
                        light[2] = 0;
                        photo.addLight(between(corners, 0, fx, fy), between(corners, 1, fx, fy), 1, light);
                        for (int k = 0; k < 3; k++) {
                            code[3 * (r * columns + c) + k] = (float) Math.sqrt(light[k] / white[k]);
                        }
                    }
                }
            }
        }
        return new Patch(left, top, columns, rows, code);
    }

    private static double between(double[][] corners, int axis, double fx, double fy) {
        double upper = corners[0][axis] + fx * (corners[1][axis] - corners[0][axis]);
        double lower = corners[2][axis] + fx * (corners[3][axis] - corners[2][axis]);
        return upper + fy * (lower - upper);
    }

    /** How far beside its top the foot of a wall is seen, measured in the plane of the tops: x, y, mm. */
    public double[] foot(double x, double y) {
        double[] at = inPhoto(new double[] {x, y, x + 1, y, x, y + 1});
        double[] foot = new double[2];
        view.project(x / printScale, y / printScale, 0, foot);
        double ax = at[2] - at[0];
        double ay = at[3] - at[1];
        double bx = at[4] - at[0];
        double by = at[5] - at[1];
        double u = foot[0] - at[0];
        double v = foot[1] - at[1];
        double det = ax * by - ay * bx;
        return new double[] {(u * by - v * bx) / det, (ax * v - ay * u) / det};
    }

    /** Where points of tops are seen: u, v in turn, pixels. */
    public double[] inPhoto(double[] ring) {
        double[] places = new double[ring.length];
        double[] uv = new double[2];
        for (int i = 0; i < ring.length; i += 2) {
            view.project(ring[i] / printScale, ring[i + 1] / printScale, -thickness, uv);
            places[i] = uv[0];
            places[i + 1] = uv[1];
        }
        return places;
    }
}
