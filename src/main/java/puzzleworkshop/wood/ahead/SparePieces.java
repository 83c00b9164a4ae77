package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.Wanted;

/**
 * How much each piece of a rack would be missed: the weeks to come are drawn and played with the rack as it is, and what is cut
 * from each piece is what it saves in boards (simulation as in {@link LearnedWorth}). Of many alike pieces only as many are used
 * as are asked for, so the others are not missed.
 */
public final class SparePieces {

    private static final int COURSES = 24;
    private static final Thrifty RULE = new Thrifty(0, PlaceRule.FULLEST_BOARD);

    /**
     * One piece.
     *
     * @param saves in money, as boards cost, on the average of the courses
     * @param usedIn share of the courses in which something is cut from it, 0 to 1
     */
    public record Missed(double saves, double usedIn) {}

    private SparePieces() {}

    /** For each piece, in the order given. */
    public static List<Missed> of(
            List<Wanted> pieces, List<LearnedWorth.Asked> asked, List<ForSale> offers, int weeks, long seed) {
        double unit = LearnedWorth.unit(offers);
        double[] area = new double[pieces.size()];
        int[] used = new int[pieces.size()];
        List<Course> courses = LearnedWorth.courses(asked, offers, weeks, seed).subList(0, COURSES);
        List<OpenBoard> rack = LearnedWorth.rack(pieces);
        for (Course course : courses) {
            List<OpenBoard> boards = Laying.copy(rack);
            course.play(new ArrayList<>(boards), RULE, 0, 0, unit, true, 0);
            for (int piece = 0; piece < used.length; piece++) {
                long cut = pieces.get(piece).area() - boards.get(piece).freeArea();
                area[piece] += cut;
                used[piece] += cut > 0 ? 1 : 0;
            }
        }
        List<Missed> missed = new ArrayList<>(Arrays.asList(new Missed[pieces.size()]));
        for (int piece = 0; piece < used.length; piece++) {
            missed.set(piece, new Missed(unit * area[piece] / COURSES, (double) used[piece] / COURSES));
        }
        return missed;
    }
}
