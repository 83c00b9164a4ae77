package puzzleworkshop.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import puzzleworkshop.measure.Size;

/** Offcuts as they lie about: rectangles, L shapes, slanted and ragged pieces of 4 to 12 corners, some with bad areas. */
public final class RandomOutlines {

    private final Random random;

    public RandomOutlines(long seed) {
        random = new Random(seed);
    }

    public Outline next(boolean withBadAreas) {
        double longer = 120 + 500 * random.nextDouble() * random.nextDouble() + 60 * random.nextDouble();
        double shorter = longer * (0.35 + 0.65 * random.nextDouble());
        List<Point> outer = switch (random.nextInt(4)) {
            case 0 -> rectangle(longer, shorter);
            case 1 -> elbow(longer, shorter);
            default -> ragged(longer, shorter);
        };
        List<List<Point>> bad = new ArrayList<>();
        if (withBadAreas) {
            for (int i = random.nextInt(4); i > 0; i--) {
                double w = 5 + 40 * random.nextDouble();
                bad.add(new Placement(
                                longer * random.nextDouble(), shorter * random.nextDouble(), 90 * random.nextDouble())
                        .corners(Size.mm(w, 5 + 30 * random.nextDouble())));
            }
        }
        return Outline.of(outer, bad);
    }

    private List<Point> rectangle(double w, double h) {
        return new Placement(0, 0, random.nextBoolean() ? 0 : 180 * random.nextDouble()).corners(Size.mm(w, h));
    }

    private List<Point> elbow(double w, double h) {
        double x = w * (0.2 + 0.6 * random.nextDouble());
        double y = h * (0.2 + 0.6 * random.nextDouble());
        return List.of(
                new Point(0, 0), new Point(w, 0), new Point(w, y), new Point(x, y), new Point(x, h), new Point(0, h));
    }

    /** Seen from its middle no corner hides another, so it never crosses itself. */
    private List<Point> ragged(double w, double h) {
        int corners = 4 + random.nextInt(9);
        List<Point> ring = new ArrayList<>();
        for (int i = 0; i < corners; i++) {
            double turn = 2 * Math.PI * (i + 0.7 * random.nextDouble()) / corners;
            double reach = 0.55 + 0.45 * random.nextDouble();
            ring.add(new Point(w / 2 * (1 + reach * Math.cos(turn)), h / 2 * (1 + reach * Math.sin(turn))));
        }
        return ring;
    }
}
