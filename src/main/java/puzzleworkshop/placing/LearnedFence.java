package puzzleworkshop.placing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import puzzleworkshop.geometry.align.NeededOverhang;
import puzzleworkshop.geometry.align.NormalTolerance;
import puzzleworkshop.measure.Length;

/**
 * Where a machine's fence brings prints, and how far off one may lie that is not measured. From {@link NeededOverhang#FEWEST}
 * boards on that is learned from them: 99.9 % of all further boards lie within, with 95 % confidence, in each of shift and
 * turn. With fewer it is what sticking by hand may be off (common practice), wider by as much as the place itself is unsure:
 * it is the mean of boards that were stuck by hand too.
 *
 * @param since boards measured since the fence was put there; none say where it lies when there are none
 * @param learnedFrom boards that the tolerance is learned from; 0 when it is common practice
 * @param shifted standard deviation along the axis where it is larger; not a number below two boards
 * @param turned standard deviation of the turn, degrees; the same
 * @param shift tolerance along either axis
 * @param turnDegrees tolerance of the turn
 * @param laid when the fence was put there, if that was told
 * @param spot where it brings prints; none with no board since
 * @param turns by how many quarters the last print lay turned
 */
public record LearnedFence(
        int since,
        int learnedFrom,
        double shifted,
        double turned,
        Length shift,
        double turnDegrees,
        Optional<Instant> laid,
        Optional<FenceSpot> spot,
        int turns) {

    /**
     * @param boards measured in the fence of a machine, each by its last place, oldest first
     * @param laid when the fence was put there, oldest first
     * @param holdDown board beyond the sticker now: boards with another margin say no longer where prints come
     * @param stickShift by how much sticking by hand may be off
     * @param stickTurn by how many degrees it may be turned
     */
    static LearnedFence of(
            List<Position> boards, List<Instant> laid, Length holdDown, Length stickShift, double stickTurn) {
        List<List<Position>> lists = FenceSpot.since(boards, laid);
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
                FenceSpot mean = FenceSpot.of(list);
                x.add(squares(
                        list,
                        p -> FenceSpot.corner(p, mean.turn()).xMm()
                                - mean.corner().xMm()));
                y.add(squares(
                        list,
                        p -> FenceSpot.corner(p, mean.turn()).yMm()
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
        return new LearnedFence(
                now.size(),
                learned ? boards.size() : 0,
                shifted,
                turned,
                learned ? Length.mm(many * shifted) : stickShift.times(many),
                many * (learned ? turned : stickTurn),
                laid.isEmpty() ? Optional.empty() : Optional.of(laid.getLast()),
                now.isEmpty() ? Optional.empty() : Optional.of(FenceSpot.of(now)),
                now.isEmpty() ? 0 : now.getLast().turns());
    }

    private static double squares(List<Position> list, ToDoubleFunction<Position> off) {
        return list.stream().mapToDouble(off).map(each -> each * each).sum();
    }

    private static double sum(List<Double> parts) {
        return parts.stream().mapToDouble(Double::doubleValue).sum();
    }
}
