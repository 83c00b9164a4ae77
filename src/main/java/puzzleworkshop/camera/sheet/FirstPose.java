package puzzleworkshop.camera.sheet;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.camera.model.Homography;

/** Where a camera stands as far as the homography of one card tells: the place to begin a fit at. */
final class FirstPose {

    private FirstPose() {}

    /** Rotation (nine numbers, by rows) and shift from the sheet's space to the camera's, as a lens without distortion sees one card. */
    static double[] of(double[] known, double[] seen, int[] card, int wanted, double focal, int width, int height) {
        List<Integer> mine = new ArrayList<>();
        for (int i = 0; i < card.length; i++) {
            if (card[i] == wanted) {
                mine.add(i);
            }
        }
        double[] from = new double[2 * mine.size()];
        double[] to = new double[2 * mine.size()];
        for (int i = 0; i < mine.size(); i++) {
            from[2 * i] = known[2 * mine.get(i)];
            from[2 * i + 1] = known[2 * mine.get(i) + 1];
            to[2 * i] = (seen[2 * mine.get(i)] - width / 2.0) / focal;
            to[2 * i + 1] = (seen[2 * mine.get(i) + 1] - height / 2.0) / focal;
        }
        double[] h = Homography.between(from, to).h();
        double n1 = Math.sqrt(h[0] * h[0] + h[3] * h[3] + h[6] * h[6]);
        double n2 = Math.sqrt(h[1] * h[1] + h[4] * h[4] + h[7] * h[7]);
        double s = 2 / (n1 + n2);
        // in front of the camera
        s = h[8] < 0 ? -s : s;
        double[] a = {h[0] * s, h[3] * s, h[6] * s};
        double[] b = {h[1] * s, h[4] * s, h[7] * s};
        normalise(a);
        double dot = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
        for (int i = 0; i < 3; i++) {
            b[i] -= dot * a[i];
        }
        normalise(b);
        double[] c = {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
        return new double[] {a[0], b[0], c[0], a[1], b[1], c[1], a[2], b[2], c[2], h[2] * s, h[5] * s, h[8] * s};
    }

    private static void normalise(double[] v) {
        double n = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
        for (int i = 0; i < 3; i++) {
            v[i] /= n;
        }
    }
}
