package puzzleworkshop.camera.outline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.sheet.Marker;
import puzzleworkshop.camera.sheet.SeenSheet;

/**
 * How bright white paper would be at each place of the plane: a smooth surface (a polynomial in the logarithm of the light, for
 * each colour) through what is surely paper, first the white around the markers that were read, then everything that looks like
 * it. Shadows lie below the surface and are left out.
 */
final class PaperLight {

    private final double middleX;
    private final double middleY;
    private final double scale;
    private final double[] bounds;
    private double[][] terms;
    private int degree;

    private PaperLight(Ground ground) {
        SeenSheet seen = ground.seen;
        middleX = ground.left + ground.columns * Ground.STEP / 2;
        middleY = ground.top + ground.rows * Ground.STEP / 2;
        scale = Math.max(ground.columns, ground.rows) * Ground.STEP / 2;
        bounds = seen.sheet().parts() == 1
                ? new double[] {0, 0, seen.sheet().width(), seen.sheet().height()}
                : new double[] {ground.left, ground.top, ground.left + 2 * scale, ground.top + ground.rows * Ground.STEP
                };
    }

    static PaperLight of(Ground ground) {
        PaperLight light = new PaperLight(ground);
        List<Integer> around = around(ground);
        if (around.size() < 60) {
            throw new puzzleworkshop.measure.Refused("camera.photo.nopaper");
        }
        light.fit(ground, around, 1);
        light.fit(ground, around, ground.seen.sheet().parts() == 1 ? 2 : 1);
        if (ground.seen.sheet().parts() == 1) {
            for (int round = 0; round < 3; round++) {
                List<Integer> alike = light.alike(ground, round == 0 ? 0.2 : 0.12);
                alike.addAll(around);
                light.fit(ground, alike, round == 0 ? 2 : 3);
            }
        }
        return light;
    }

    /** Light at a place of the photo, as a share of white paper's there. */
    static void against(double[] white, Photo photo, double u, double v, double[] light) {
        Arrays.fill(light, 0);
        photo.addLight(u, v, 1, light);
        for (int c = 0; c < 3; c++) {
            light[c] /= white[c];
        }
    }

    /** Cells in the white ring around markers that were read. */
    private static List<Integer> around(Ground ground) {
        List<Integer> cells = new ArrayList<>();
        SeenSheet seen = ground.seen;
        for (SeenSheet.Card card : seen.cards()) {
            for (Marker marker : seen.sheet().markers(card.part())) {
                if (!seen.codes().contains(marker.code())) {
                    continue;
                }
                double inner = marker.side() / 2 + 1.2;
                for (double t = -inner; t <= inner; t += 0.7) {
                    double[][] ring = {{t, -inner - 0.6}, {t, inner + 0.6}, {-inner - 0.6, t}, {inner + 0.6, t}};
                    for (double[] d : ring) {
                        double x = marker.x() + d[0];
                        double y = marker.y() + d[1];
                        int cell = ground.cell(card.toX(x, y), card.toY(x, y));
                        if (cell >= 0
                                && (ground.kind[cell] == Ground.Kind.PAPER
                                        || seen.sheet().parts() > 1 && ground.kind[cell] == Ground.Kind.MARKER)) {
                            cells.add(cell);
                        }
                    }
                }
            }
        }
        return cells;
    }

    /** Paper cells near the surface, thinned out. */
    private List<Integer> alike(Ground ground, double within) {
        List<Integer> cells = new ArrayList<>();
        double[] at = new double[3];
        for (int r = 1; r < ground.rows; r += 3) {
            for (int c = 1; c < ground.columns; c += 3) {
                int cell = r * ground.columns + c;
                if (ground.kind[cell] != Ground.Kind.PAPER) {
                    continue;
                }
                at(ground.x(cell), ground.y(cell), at);
                double[] log = new double[3];
                for (int i = 0; i < 3; i++) {
                    log[i] = Math.log((ground.light[i][cell] + 1e-4) / at[i]);
                }
                double level = (log[0] + log[1] + log[2]) / 3;
                if (Math.abs(level) < within && Math.abs(log[0] - log[1]) < 0.06 && Math.abs(log[1] - log[2]) < 0.07) {
                    cells.add(cell);
                }
            }
        }
        return cells;
    }

    private void fit(Ground ground, List<Integer> cells, int wanted) {
        degree = wanted;
        int n = (degree + 1) * (degree + 2) / 2;
        double[] basis = new double[cells.size() * n];
        double[][] light = new double[3][cells.size()];
        for (int i = 0; i < cells.size(); i++) {
            int cell = cells.get(i);
            System.arraycopy(basis(ground.x(cell), ground.y(cell)), 0, basis, i * n, n);
            for (int c = 0; c < 3; c++) {
                light[c][i] = Math.log(ground.light[c][cell] + 1e-4);
            }
        }
        double[] weight = new double[cells.size()];
        Arrays.fill(weight, 1);
        double[] level = new double[cells.size()];
        for (int round = 0; round < 8; round++) {
            terms = solve(basis, light, weight, n);
            for (int i = 0; i < level.length; i++) {
                double sum = 0;
                for (int c = 0; c < 3; c++) {
                    double on = 0;
                    for (int a = 0; a < n; a++) {
                        on += terms[c][a] * basis[i * n + a];
                    }
                    sum += light[c][i] - on;
                }
                level[i] = sum / 3;
            }
            double[] sorted = level.clone();
            java.util.Arrays.sort(sorted);
            // what is shaded lies far below, nothing lies far above: the spread is read off the upper half
            double spread = Math.max(0.012, sorted[sorted.length * 9 / 10] - sorted[sorted.length / 2]);
            double middle = sorted[sorted.length / 2];
            for (int i = 0; i < level.length; i++) {
                double d = level[i] - middle;
                double k = d < 0 ? d / (1.5 * spread) : d / (3 * spread);
                weight[i] = 1 / (1 + k * k * k * k);
            }
        }
    }

    /** Weighted least squares of all three channels: the same normal matrix, three right sides. */
    private static double[][] solve(double[] basis, double[][] light, double[] weight, int n) {
        double[] sums = new double[n * n];
        double[] sides = new double[3 * n];
        for (int i = 0; i < weight.length; i++) {
            int at = i * n;
            for (int a = 0; a < n; a++) {
                double wa = weight[i] * basis[at + a];
                for (int b = 0; b <= a; b++) {
                    sums[a * n + b] += wa * basis[at + b];
                }
                sides[a] += wa * light[0][i];
                sides[n + a] += wa * light[1][i];
                sides[2 * n + a] += wa * light[2][i];
            }
        }
        DMatrixRMaj normal = new DMatrixRMaj(n, n);
        DMatrixRMaj right = new DMatrixRMaj(n, 3);
        for (int a = 0; a < n; a++) {
            for (int b = 0; b <= a; b++) {
                normal.set(a, b, sums[a * n + b]);
                normal.set(b, a, sums[a * n + b]);
            }
            // a little stiffness where few cells say little
            normal.add(a, a, a == 0 ? 1e-9 : 1e-4 * weight.length);
            for (int c = 0; c < 3; c++) {
                right.set(a, c, sides[c * n + a]);
            }
        }
        DMatrixRMaj result = new DMatrixRMaj(n, 3);
        CommonOps_DDRM.solve(normal, right, result);
        double[][] terms = new double[3][n];
        for (int a = 0; a < n; a++) {
            for (int c = 0; c < 3; c++) {
                terms[c][a] = result.get(a, c);
            }
        }
        return terms;
    }

    private double[] basis(double x, double y) {
        double[] basis = new double[(degree + 1) * (degree + 2) / 2];
        double a = (x - middleX) / scale;
        double b = (y - middleY) / scale;
        basis[0] = 1;
        int before = 0;
        int at = 1;
        for (int d = 1; d <= degree; d++) {
            for (int j = 0; j < d; j++) {
                basis[at++] = basis[before + j] * a;
            }
            basis[at++] = basis[before + d - 1] * b;
            before += d;
        }
        return basis;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /** Light of white paper at a place; beside the sheet that of its nearest edge. */
    void at(double x, double y, double[] out) {
        double[] basis = basis(Math.clamp(x, bounds[0], bounds[2]), Math.clamp(y, bounds[1], bounds[3]));
        for (int c = 0; c < 3; c++) {
            out[c] = Math.exp(dot(terms[c], basis));
        }
    }
}
