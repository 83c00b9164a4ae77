package puzzleworkshop.placing;

import java.time.Instant;
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
 * @param withMarks overhang needed when every board is measured
 * @param byJig overhang needed when boards in the jig are not measured
 * @param byEye overhang needed when boards that are laid by hand are not measured and the file is moved over the print by eye
 */
public record LearnedOverhang(
        int cuts,
        double turned,
        int inJig,
        Optional<NeededOverhang> withMarks,
        Optional<NeededOverhang> byJig,
        Optional<NeededOverhang> byEye) {

    /**
     * @param measured by marks on one machine, newest first
     * @param laid when the fence was put on its bed, oldest first
     * @param kerf width of the cut
     * @param repeatability of the machine
     * @param stickShift by how much a file that is moved by eye may be off
     */
    public static LearnedOverhang of(
            List<Position> measured, List<Instant> laid, Length kerf, Length repeatability, Length stickShift) {
        double always = kerf.mm() / 2 + repeatability.mm();
        List<Position> last = lastOfEach(measured);
        List<Position> jig = last.stream().filter(Position::inJig).toList();
        List<Double> turns =
                last.stream().map(p -> Math.toDegrees(p.place().turn())).toList();
        return new LearnedOverhang(
                last.size(),
                deviation(turns),
                jig.size(),
                NeededOverhang.of(last.stream().map(p -> p.needed().mm()).toList()),
                NeededOverhang.of(withoutMarks(UsualSpot.since(jig, laid), always)),
                NeededOverhang.of(last.stream()
                        .filter(board -> !board.inJig())
                        .map(board -> unturned(board) + stickShift.mm() + always)
                        .toList()));
    }

    /** Each board by its last place, oldest first. */
    static List<Position> lastOfEach(List<Position> newestFirst) {
        Map<String, Position> boards = new LinkedHashMap<>();
        newestFirst.forEach(position -> boards.putIfAbsent(position.jobId() + "/" + position.copy(), position));
        return List.copyOf(boards.values()).reversed();
    }

    /** What each board would have needed, cut where those before it in the same fence lay on average, as it would have been. */
    private static List<Double> withoutMarks(List<List<Position>> fences, double always) {
        List<Double> needs = new ArrayList<>();
        for (List<Position> boards : fences) {
            for (int i = 1; i < boards.size(); i++) {
                Position board = boards.get(i);
                Similarity usual = UsualSpot.of(boards.subList(0, i))
                        .bring(DrawnPrint.edges(board.finished(), board.overhang(), board.turns()));
                needs.add(farthestOff(board, usual) + always);
            }
        }
        return needs;
    }

    /** What a board would have needed with the file moved over the middle of its print and not turned. */
    private static double unturned(Position board) {
        Point middle =
                DrawnPrint.edges(board.finished(), Length.ZERO, board.turns()).centre();
        Point seen = board.place().of(middle);
        return farthestOff(board, new Similarity(1, 0, seen.xMm() - middle.xMm(), seen.yMm() - middle.yMm()));
    }

    /** How far a corner of the cut gets towards an edge of the print, at most. */
    private static double farthestOff(Position board, Similarity cutAt) {
        Bounds cut = DrawnPrint.edges(board.finished(), Length.ZERO, board.turns());
        double most = 0;
        for (Point p : List.of(
                new Point(cut.minX(), cut.minY()),
                new Point(cut.maxX(), cut.minY()),
                new Point(cut.maxX(), cut.maxY()),
                new Point(cut.minX(), cut.maxY()))) {
            Point hit = board.place().backwards(cutAt.of(p));
            most = Math.max(most, Math.max(Math.abs(hit.xMm() - p.xMm()), Math.abs(hit.yMm() - p.yMm())));
        }
        return most;
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
