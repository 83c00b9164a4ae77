package puzzleworkshop.placing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.Similarity;

/**
 * Where prints come on average, in a fence or laid by hand. A fence holds a blank at its left and front edges, and every blank has the same margin
 * round its print: so the front left corner of a print comes to one place, as far as the print was stuck straight and in the
 * middle. A print is off by the shift of its middle and its turn, as sticking is.
 *
 * @param corner where the front left corner of a print comes that lies turned as they do on average
 * @param turn of the prints on average, in radians
 */
public record UsualSpot(Point corner, double turn) {

    /** @param boards measured where they lay, at least one */
    static UsualSpot of(List<Position> boards) {
        double turn =
                boards.stream().mapToDouble(p -> p.place().turn()).average().orElseThrow();
        List<Point> corners = boards.stream().map(p -> corner(p, turn)).toList();
        return new UsualSpot(
                new Point(
                        corners.stream().mapToDouble(Point::xMm).average().orElseThrow(),
                        corners.stream().mapToDouble(Point::yMm).average().orElseThrow()),
                turn);
    }

    /** From the middle that was seen, as if the print were turned so. */
    static Point corner(Position board, double turn) {
        Bounds edges = DrawnPrint.edges(board.finished(), board.overhang(), board.turns());
        Point seen = board.place().of(edges.centre());
        Point way = turned(turn).of(new Point(-edges.width() / 2, edges.height() / 2));
        return seen.plus(way.xMm(), way.yMm());
    }

    /** Where a print with such edges comes to lie. */
    Similarity bring(Bounds edges) {
        Similarity turned = turned(turn);
        Point drawn = turned.of(new Point(edges.minX(), edges.maxY()));
        return new Similarity(turned.a(), turned.b(), corner.xMm() - drawn.xMm(), corner.yMm() - drawn.yMm());
    }

    private static Similarity turned(double turn) {
        return Similarity.about(new Point(0, 0), 1, turn, 0, 0);
    }

    /**
     * Boards by when they lay in the fence: each time it was put on the bed begins a list, and each time the margin of the
     * blanks was another; the last list is of the fence as it lies now and may be empty.
     *
     * @param boards oldest first
     * @param laid when the fence was put there, oldest first
     */
    static List<List<Position>> since(List<Position> boards, List<Instant> laid) {
        List<List<Position>> lists = new ArrayList<>();
        lists.add(new ArrayList<>());
        int next = 0;
        for (Position board : boards) {
            for (; next < laid.size() && !board.at().isBefore(laid.get(next)); next++) {
                lists.add(new ArrayList<>());
            }
            List<Position> last = lists.getLast();
            if (!last.isEmpty() && !last.getLast().holdDown().equals(board.holdDown())) {
                lists.add(new ArrayList<>());
            }
            lists.getLast().add(board);
        }
        for (; next < laid.size(); next++) {
            lists.add(new ArrayList<>());
        }
        return lists;
    }
}
