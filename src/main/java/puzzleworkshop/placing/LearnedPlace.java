package puzzleworkshop.placing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.ExpectedMark;
import puzzleworkshop.geometry.align.MarkReading;
import puzzleworkshop.geometry.align.NeededOverhang;
import puzzleworkshop.geometry.align.NormalTolerance;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;

/**
 * Where prints come to lie on a machine, in its fence or laid by hand, and how far off one may lie that is not measured. From {@link NeededOverhang#FEWEST}
 * boards on that is learned from them: 99.9 % of all further boards lie within, with 95 % confidence, in each of shift and
 * turn. With fewer it is what sticking by hand may be off (common practice), wider by as much as the place itself is unsure:
 * it is the mean of boards that were stuck by hand too. Laid by hand they are alike in their turn more than in their place:
 * whoever lays a board goes by the bed's edges, and the place may be any.
 *
 * @param since boards measured since the fence was put there, or all; none say where prints come when there are none
 * @param learnedFrom boards that the tolerance is learned from; 0 when it is common practice
 * @param shifted standard deviation along the axis where it is larger; not a number below two boards
 * @param turned standard deviation of the turn, degrees; the same
 * @param shift tolerance along either axis
 * @param turnDegrees tolerance of the turn
 * @param laid when the fence was put there, if that was told
 * @param spot where prints come; none with no board since
 * @param turns by how many quarters the last print lay turned
 */
public record LearnedPlace(
        int since,
        int learnedFrom,
        double shifted,
        double turned,
        Length shift,
        double turnDegrees,
        Optional<Instant> laid,
        Optional<UsualSpot> spot,
        int turns) {

    /** A cross that may lie further away is found quicker with the eye than by numbers (common practice). */
    public static final double FOUND_BY_EYE_MM = 50;
    /** A reading is off by no more than so many deviations in 999 of 1,000 (Rayleigh's distribution: √(−2·ln 0.001)). */
    private static final double READINGS = 3.717;

    /**
     * @param boards measured on a machine, all in its fence or all laid by hand, each by its last place, oldest first
     * @param laid when the fence was put there, oldest first
     * @param holdDown board beyond the sticker now: boards with another margin say no longer where prints come
     * @param stickShift by how much sticking by hand may be off
     * @param stickTurn by how many degrees it may be turned
     */
    static LearnedPlace of(
            List<Position> boards, List<Instant> laid, Length holdDown, Length stickShift, double stickTurn) {
        List<List<Position>> lists = UsualSpot.since(boards, laid);
        List<Position> now = lists.getLast().stream()
                .filter(board -> board.holdDown().equals(holdDown))
                .toList();
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        List<Double> turns = new ArrayList<>();
        int freedom = 0;
        for (List<Position> list : lists) {
            if (list.size() > 1) {
                freedom += list.size() - 1;
                UsualSpot mean = UsualSpot.of(list);
                x.add(squares(
                        list,
                        p -> UsualSpot.corner(p, mean.turn()).xMm()
                                - mean.corner().xMm()));
                y.add(squares(
                        list,
                        p -> UsualSpot.corner(p, mean.turn()).yMm()
                                - mean.corner().yMm()));
                turns.add(squares(list, p -> Math.toDegrees(p.place().turn() - mean.turn())));
            }
        }
        double shifted = Math.sqrt(Math.max(sum(x), sum(y)) / freedom);
        double turned = Math.sqrt(sum(turns) / freedom);
        int averaged = Math.max(1, now.size());
        boolean learned = freedom >= NeededOverhang.FEWEST - 1;
        double many = learned
                ? NormalTolerance.factor(freedom, averaged, NormalTolerance.COVERS_999, NormalTolerance.CONFIDENT_95)
                : Math.sqrt(1 + 1.0 / averaged);
        return new LearnedPlace(
                now.size(),
                learned ? boards.size() : 0,
                shifted,
                turned,
                learned ? Length.mm(many * shifted) : stickShift.times(many),
                many * (learned ? turned : stickTurn),
                laid.isEmpty() ? Optional.empty() : Optional.of(laid.getLast()),
                now.isEmpty() ? Optional.empty() : Optional.of(UsualSpot.of(now)),
                now.isEmpty() ? 0 : now.getLast().turns());
    }

    /** Learned from boards that lay as they do now. */
    private boolean isLearned() {
        return learnedFrom > 0 && spot.isPresent();
    }

    /** By how many degrees a print may lie turned against the machine's axes; none where that is not learned. */
    public Optional<Double> farthestTurned() {
        return isLearned() ? spot.map(usual -> Math.abs(Math.toDegrees(usual.turn())) + turnDegrees) : Optional.empty();
    }

    /** Whether a print may lie turned so, in radians; always where that is not learned. */
    public boolean mayTurn(double turn) {
        return !isLearned() || Math.abs(turn - spot.orElseThrow().turn()) <= Math.toRadians(turnDegrees);
    }

    /**
     * Where the marks that were not visited yet are to be looked for: round one that was, as prints usually lie turned; by two
     * or more where those say; with none visited where prints usually come, if that is nearer than the eye finds it.
     *
     * @param turns by how many quarters, clockwise, the print lies turned
     * @return by the number of the mark
     */
    public Map<Integer, ExpectedMark> expected(
            DrawnPrint print, int turns, List<MarkVisit> visits, Machine machine, PlacingRules rules) {
        Function<Point, Optional<ExpectedMark>> looked = lookedFor(print, turns, visits, machine, rules);
        Map<Integer, ExpectedMark> expected = new TreeMap<>();
        for (int i = 0; i < print.marks().size(); i++) {
            int mark = i + 1;
            if (visits.stream().noneMatch(visit -> visit.mark() == mark)) {
                looked.apply(DrawnPrint.turned(print.marks().get(i), turns)).ifPresent(at -> expected.put(mark, at));
            }
        }
        return expected;
    }

    private Function<Point, Optional<ExpectedMark>> lookedFor(
            DrawnPrint print, int turns, List<MarkVisit> visits, Machine machine, PlacingRules rules) {
        if (visits.isEmpty()) {
            Bounds edges = print.edges(turns);
            return mark -> isLearned()
                    ? Optional.of(ExpectedMark.usually(
                                    spot.orElseThrow().bring(edges),
                                    edges.centre(),
                                    mark,
                                    shift.mm(),
                                    Math.toRadians(turnDegrees)))
                            .filter(found -> found.within().orElseThrow() <= FOUND_BY_EYE_MM)
                    : Optional.empty();
        }
        if (visits.size() < Measuring.FEWEST) {
            MarkVisit first = visits.getFirst();
            Point drawn = DrawnPrint.turned(first.drawn(), turns);
            Point seen = machine.control().axes().onBed(first.shownX(), first.shownY(), machine.bed());
            double turn = isLearned() ? spot.orElseThrow().turn() : 0;
            OptionalDouble within =
                    isLearned() ? OptionalDouble.of(Math.toRadians(turnDegrees)) : OptionalDouble.empty();
            return mark -> Optional.of(ExpectedMark.round(
                    drawn, seen, mark, turn, within, READINGS * rules.reading().mm()));
        }
        try {
            MarkReading reading =
                    Measuring.of(print, turns, visits, machine, rules).reading();
            return mark -> reading.isPlaced()
                    ? Optional.of(ExpectedMark.fitted(
                            reading.fit(), mark, rules.reading().mm(), PlacingRules.SURE))
                    : Optional.empty();
        } catch (Refused tooNear) {
            return mark -> Optional.empty();
        }
    }

    private static double squares(List<Position> list, ToDoubleFunction<Position> off) {
        return list.stream().mapToDouble(off).map(each -> each * each).sum();
    }

    private static double sum(List<Double> parts) {
        return parts.stream().mapToDouble(Double::doubleValue).sum();
    }
}
