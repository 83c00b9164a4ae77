package puzzleworkshop.camera.rings;

/** Closed rings of points as x, y in turn: smoothing, even spacing, lengths and areas. */
public final class Ring {

    /** Distance of points along a measured edge, mm. */
    public static final double SPACING = 0.6;

    private Ring() {}

    public static int size(double[] ring) {
        return ring.length / 2;
    }

    public static double length(double[] ring) {
        double sum = 0;
        int n = size(ring);
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            sum += Math.hypot(ring[2 * j] - ring[2 * i], ring[2 * j + 1] - ring[2 * i + 1]);
        }
        return sum;
    }

    /** Positive when clockwise as seen (y down). */
    public static double area(double[] ring) {
        double sum = 0;
        int n = size(ring);
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            sum += ring[2 * i] * ring[2 * j + 1] - ring[2 * j] * ring[2 * i + 1];
        }
        return sum / 2;
    }

    /** Each point the mean of itself and its neighbours, as many rounds as asked. */
    public static double[] smoothed(double[] ring, int rounds) {
        double[] now = ring;
        int n = size(ring);
        for (int round = 0; round < rounds; round++) {
            double[] next = new double[now.length];
            for (int i = 0; i < n; i++) {
                int a = (i + n - 1) % n;
                int b = (i + 1) % n;
                for (int c = 0; c < 2; c++) {
                    next[2 * i + c] = 0.25 * now[2 * a + c] + 0.5 * now[2 * i + c] + 0.25 * now[2 * b + c];
                }
            }
            now = next;
        }
        return now;
    }

    /** Points at even distances along the ring. */
    public static double[] spaced(double[] ring, double step) {
        double total = length(ring);
        int count = Math.max(8, (int) Math.round(total / step));
        double[] even = new double[2 * count];
        int n = size(ring);
        int at = 0;
        double passed = 0;
        double next = Math.hypot(ring[2 % (2 * n)] - ring[0], ring[3 % (2 * n)] - ring[1]);
        for (int i = 0; i < count; i++) {
            double wanted = total * i / count;
            while (passed + next < wanted && at < n - 1) {
                passed += next;
                at++;
                int j = (at + 1) % n;
                next = Math.hypot(ring[2 * j] - ring[2 * at], ring[2 * j + 1] - ring[2 * at + 1]);
            }
            double share = next > 0 ? Math.clamp((wanted - passed) / next, 0, 1) : 0;
            int j = (at + 1) % n;
            even[2 * i] = ring[2 * at] + share * (ring[2 * j] - ring[2 * at]);
            even[2 * i + 1] = ring[2 * at + 1] + share * (ring[2 * j + 1] - ring[2 * at + 1]);
        }
        return even;
    }

    /** Outward normals of a ring that has its inside to the right. */
    public static double[] normals(double[] ring, int reach) {
        int n = size(ring);
        double[] normals = new double[ring.length];
        for (int i = 0; i < n; i++) {
            int a = Math.floorMod(i - reach, n);
            int b = (i + reach) % n;
            double dx = ring[2 * b] - ring[2 * a];
            double dy = ring[2 * b + 1] - ring[2 * a + 1];
            double d = Math.hypot(dx, dy);
            normals[2 * i] = d > 0 ? dy / d : 0;
            normals[2 * i + 1] = d > 0 ? -dx / d : 0;
        }
        return normals;
    }

    /** Without the way out and back between two points that lie as good as together, up to a length of that way in mm. */
    public static double[] unfolded(double[] ring, double longest) {
        int n = size(ring);
        double[] kept = new double[ring.length];
        int count = 0;
        int i = 0;
        while (i < n) {
            kept[2 * count] = ring[2 * i];
            kept[2 * count + 1] = ring[2 * i + 1];
            count++;
            double way = 0;
            int back = i + 1;
            for (int j = i + 1; j < n && way < longest; j++) {
                way += Math.hypot(ring[2 * j] - ring[2 * j - 2], ring[2 * j + 1] - ring[2 * j - 1]);
                double apart = Math.hypot(ring[2 * j] - ring[2 * i], ring[2 * j + 1] - ring[2 * i + 1]);
                if (apart < 0.45 && way > 3 * apart && way > 1) {
                    back = j + 1;
                }
            }
            i = back;
        }
        return count < 8 ? ring : java.util.Arrays.copyOf(kept, 2 * count);
    }
}
