package puzzleworkshop.placing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.NeededOverhang;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.measure.Length;

/**
 * What the measured places say about a machine and its people: how far off prints usually lie, and which overhang would
 * have done. A board counts once, by its last measured place.
 *
 * @param cuts boards that were measured
 * @param turned standard deviation of the turn about its mean, degrees; not a number below two
 * @param inJig boards that lay in the jig
 * @param shifted in the jig: standard deviation, along an axis, of where the fixed corner came; not a number below two
 * @param withMarks overhang needed when every board is measured
 * @param byJig overhang needed when boards in the jig are not measured
 */
public record LearnedOverhang(
        int cuts,
        double turned,
        int inJig,
        double shifted,
        Optional<NeededOverhang> withMarks,
        Optional<NeededOverhang> byJig) {

    /**
     * @param measured by marks on one machine, newest first
     * @param kerf width of the cut
     * @param repeatability of the machine
     */
    public static LearnedOverhang of(List<Position> measured, Length kerf, Length repeatability) {
        Map<String, Position> boards = new LinkedHashMap<>();
        measured.forEach(position -> boards.putIfAbsent(position.jobId() + "/" + position.copy(), position));
        List<Position> last = List.copyOf(boards.values()).reversed();
        List<Position> jig = last.stream().filter(Position::inJig).toList();
        List<Double> turns =
                last.stream().map(p -> Math.toDegrees(p.place().turn())).toList();
        List<Point> corners = jig.stream().map(LearnedOverhang::fixed).toList();
        double shifted = Math.sqrt((square(
                                deviation(corners.stream().map(Point::xMm).toList()))
                        + square(deviation(corners.stream().map(Point::yMm).toList())))
                / 2);
        return new LearnedOverhang(
                last.size(),
                deviation(turns),
                jig.size(),
                shifted,
                NeededOverhang.of(last.stream().map(p -> p.needed().mm()).toList()),
                NeededOverhang.of(withoutMarks(jig, corners, kerf, repeatability)));
    }

    /** What each board in the jig would have needed, cut where the jig brings its prints on average. */
    private static List<Double> withoutMarks(
            List<Position> jig, List<Point> corners, Length kerf, Length repeatability) {
        if (jig.isEmpty()) {
            return List.of();
        }
        double x = corners.stream().mapToDouble(Point::xMm).average().orElseThrow();
        double y = corners.stream().mapToDouble(Point::yMm).average().orElseThrow();
        double turn = jig.stream().mapToDouble(p -> p.place().turn()).average().orElseThrow();
        List<Double> needs = new ArrayList<>();
        for (Position position : jig) {
            Bounds edges = edges(position, position.overhang().mm());
            Similarity about = Similarity.about(new Point(0, 0), 1, turn, 0, 0);
            Point corner = about.of(new Point(edges.minX(), edges.maxY()));
            Similarity usual = new Similarity(about.a(), about.b(), x - corner.xMm(), y - corner.yMm());
            double most = 0;
            Bounds cut = edges(position, 0);
            for (Point p : List.of(
                    new Point(cut.minX(), cut.minY()),
                    new Point(cut.maxX(), cut.minY()),
                    new Point(cut.maxX(), cut.maxY()),
                    new Point(cut.minX(), cut.maxY()))) {
                Point hit = position.place().backwards(usual.of(p));
                most = Math.max(most, Math.max(Math.abs(hit.xMm() - p.xMm()), Math.abs(hit.yMm() - p.yMm())));
            }
            needs.add(most + kerf.mm() / 2 + repeatability.mm());
        }
        return needs;
    }

    /** Where the corner came that the jig holds: the print's front left one. */
    private static Point fixed(Position position) {
        Bounds edges = edges(position, position.overhang().mm());
        return position.place().of(new Point(edges.minX(), edges.maxY()));
    }

    private static Bounds edges(Position position, double overhang) {
        return Bounds.at(DrawnPrint.turned(new Point(-overhang, -overhang), position.turns()))
                .and(DrawnPrint.turned(
                        new Point(
                                position.finished().width().mm() + overhang,
                                position.finished().height().mm() + overhang),
                        position.turns()));
    }

    private static double deviation(List<Double> values) {
        double mean = values.stream().collect(Collectors.averagingDouble(value -> value));
        double sum = values.stream().mapToDouble(value -> square(value - mean)).sum();
        return Math.sqrt(sum / (values.size() - 1));
    }

    private static double square(double value) {
        return value * value;
    }
}
