package puzzleworkshop.camera.pieces;

/** Turn and shift from a piece's own place to where it lies. */
final class Pose {
    double cos;
    double sin;
    double x;
    double y;
    /** The longest stretch of the edge that shows no step, of all of it. */
    double unseen;
    /** Of each point of the edge ({@link PlaceEdge}), whether the photo steps there. */
    final boolean[] stepsAt = new boolean[PlaceEdge.POINTS];
    /** What is no step, in code values. */
    double least;

    Pose moved(double dx, double dy) {
        Pose moved = new Pose();
        moved.cos = cos;
        moved.sin = sin;
        moved.x = x + dx;
        moved.y = y + dy;
        return moved;
    }

    double x(double px, double py) {
        return turnedX(px, py) + x;
    }

    double y(double px, double py) {
        return turnedY(px, py) + y;
    }

    /** Of a direction. */
    double turnedX(double dx, double dy) {
        return cos * dx - sin * dy;
    }

    double turnedY(double dx, double dy) {
        return sin * dx + cos * dy;
    }

    /** By the turn and shift that make the distances along the normals least: sums of a least-squares problem, three rows of four. */
    void settle(double[][] sums) {
        double[] by = solved(sums);
        double c = Math.cos(by[2]);
        double s = Math.sin(by[2]);
        double turned = c * cos - s * sin;
        sin = s * cos + c * sin;
        cos = turned;
        x += by[0];
        y += by[1];
    }

    /** Three equations by Cramer's rule; nothing moves where they do not tell. */
    private static double[] solved(double[][] a) {
        double det = determinant(a, 0, 1, 2);
        if (Math.abs(det) < 1e-9) {
            return new double[3];
        }
        return new double[] {determinant(a, 3, 1, 2) / det, determinant(a, 0, 3, 2) / det, determinant(a, 0, 1, 3) / det
        };
    }

    private static double determinant(double[][] a, int p, int q, int r) {
        return a[0][p] * (a[1][q] * a[2][r] - a[1][r] * a[2][q])
                - a[0][q] * (a[1][p] * a[2][r] - a[1][r] * a[2][p])
                + a[0][r] * (a[1][p] * a[2][q] - a[1][q] * a[2][p]);
    }
}
