package puzzleworkshop.geometry.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Segments;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Size;

/**
 * A way to saw a part of a board into rectangles: what the first does not take the next is sawn from. An L is sawn along one
 * leg or along the other; which is better depends on what its rectangles are worth.
 *
 * @param pieces in the order in which they are sawn, none below the smallest useful size
 * @param value by {@link UsefulSizes#value}
 */
public record Sawing(List<LargestRectangle> pieces, Area value) {

    private static final int MOST_PIECES = 4;
    private static final double ALIKE_MM = 0.5;

    public Sawing {
        pieces = List.copyOf(pieces);
    }

    /**
     * Ways that differ, the one worth most first; of ways worth the same, the one that begins with the largest rectangle.
     * Besides the largest first: whatever it leaves, grown over the whole part, first.
     */
    public static List<Sawing> ways(Outline part, UsefulSizes sizes) {
        Segments border = part.segments();
        double[] angles = Directions.of(border, MOST_PIECES);
        List<LargestRectangle> largestFirst = largestFirst(border, angles, sizes, List.of());
        List<Sawing> ways = new ArrayList<>();
        ways.add(of(largestFirst, sizes));
        largestFirst.stream()
                .skip(1)
                .map(piece -> piece.grownIn(border))
                .flatMap(Optional::stream)
                .map(first -> of(largestFirst(border, angles, sizes, List.of(first)), sizes))
                .filter(way -> ways.stream().noneMatch(way::isLike))
                .forEach(ways::add);
        ways.sort(Comparator.comparingDouble((Sawing way) -> -Math.rint(way.value.mm2())));
        return List.copyOf(ways);
    }

    private static List<LargestRectangle> largestFirst(
            Segments whole, double[] angles, UsefulSizes sizes, List<LargestRectangle> sawn) {
        List<LargestRectangle> pieces = new ArrayList<>(sawn);
        Segments border = whole;
        for (LargestRectangle piece : sawn) {
            border = piece.out(border);
        }
        while (pieces.size() < MOST_PIECES) {
            Segments left = border;
            Optional<LargestRectangle> next = LargestRectangle.in(left, angles)
                    .filter(rectangle -> sizes.rung(0).fitsUpright(rectangle.size()))
                    .or(() -> LargestRectangle.around(left, angles, sizes.rungs()));
            if (next.isEmpty()) {
                break;
            }
            pieces.add(next.get());
            border = next.get().out(border);
        }
        return pieces;
    }

    private static Sawing of(List<LargestRectangle> pieces, UsefulSizes sizes) {
        return new Sawing(
                pieces,
                pieces.stream()
                        .map(piece -> sizes.value(piece.size().area(), rung(piece, sizes)))
                        .reduce(Area.ZERO, Area::plus));
    }

    private static int rung(LargestRectangle piece, UsefulSizes sizes) {
        for (int rung = sizes.top(); rung > UsefulSizes.SCRAP; rung--) {
            if (sizes.rung(rung).fitsUpright(piece.size())) {
                return rung;
            }
        }
        return UsefulSizes.SCRAP;
    }

    private boolean isLike(Sawing other) {
        if (pieces.size() != other.pieces.size()) {
            return false;
        }
        List<Size> own = sizes();
        List<Size> others = other.sizes();
        return IntStream.range(0, own.size()).allMatch(i -> isLike(own.get(i), others.get(i)));
    }

    private static boolean isLike(Size one, Size other) {
        return Math.abs(one.longerSide().mm() - other.longerSide().mm()) < ALIKE_MM
                && Math.abs(one.shorterSide().mm() - other.shorterSide().mm()) < ALIKE_MM;
    }

    private List<Size> sizes() {
        return pieces.stream()
                .map(LargestRectangle::size)
                .sorted(Comparator.comparingDouble(
                        (Size size) -> size.longerSide().mm()))
                .toList();
    }
}
