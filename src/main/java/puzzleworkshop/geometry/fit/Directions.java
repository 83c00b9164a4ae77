package puzzleworkshop.geometry.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import puzzleworkshop.geometry.Segments;
import puzzleworkshop.geometry.Turn;

/** The angles at which the edges of a shape run, modulo 90°, longest edges first. */
public final class Directions {

    private record Direction(double degrees, double length) {}

    private Directions() {}

    /** At most so many; edges that run alike (to 10⁻⁷ degrees) count together. Upright is always among them. */
    public static double[] of(Segments border, int most) {
        List<Direction> all = new ArrayList<>();
        for (int i = 0; i < border.count; i++) {
            double dx = border.bx[i] - border.ax[i];
            double dy = border.by[i] - border.ay[i];
            double degrees = dx == 0 || dy == 0 ? 0 : Turn.within(Math.toDegrees(Math.atan2(dy, dx)), 90);
            all.add(new Direction(degrees, Math.sqrt(dx * dx + dy * dy)));
        }
        all.sort(Comparator.comparingDouble(Direction::degrees));
        List<Direction> merged = new ArrayList<>();
        for (Direction direction : all) {
            Direction last = merged.isEmpty() ? null : merged.getLast();
            if (last != null && direction.degrees - last.degrees < 1e-7) {
                merged.set(merged.size() - 1, new Direction(last.degrees, last.length + direction.length));
            } else {
                merged.add(direction);
            }
        }
        merged.sort(Comparator.comparingDouble(Direction::length).reversed());
        List<Double> kept = new ArrayList<>(
                merged.stream().limit(most).map(Direction::degrees).toList());
        if (!kept.contains(0.0)) {
            kept.add(0.0);
        }
        return kept.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
