package puzzleworkshop.pattern.shapes;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import puzzleworkshop.measure.Length;
import puzzleworkshop.pattern.PersonalShape;

/**
 * Two personal pieces that would go into each other's places: their outlines, laid upon each other in the best turn, are
 * apart by no more than the play of the cut.
 *
 * @param one its name
 * @param other the other's
 * @param apartMm greatest distance between their outlines
 */
public record AlikeShapes(String one, String other, double apartMm) {

    /** What must remain beyond the play, so that two are told apart with certainty. */
    private static final double MARGIN_MM = 0.06;

    private static final double LEAST_MM = 0.2;
    /** The distance is found a little too large at most. */
    private static final double SURELY = 1.1;

    /** Two lines that differ by more than this cannot be taken for each other. */
    public static double toldApartMm(Length kerf) {
        return Math.max(LEAST_MM, kerf.mm()) + MARGIN_MM;
    }

    /** The first pair that could be exchanged, in the order they lie in the pattern; none when all are told apart. */
    public static Optional<AlikeShapes> of(List<PersonalShape> shapes, Length kerf) {
        List<OutlineDistance> outlines = shapes.stream()
                .map(shape -> new OutlineDistance(shape.outline()))
                .toList();
        double least = SURELY * toldApartMm(kerf);
        return IntStream.range(1, shapes.size())
                .boxed()
                .flatMap(i -> IntStream.range(0, i)
                        .filter(k -> outlines.get(i).couldBeWithin(outlines.get(k), least))
                        .mapToObj(k -> new AlikeShapes(
                                shapes.get(k).name(),
                                shapes.get(i).name(),
                                outlines.get(i).to(outlines.get(k))))
                        .filter(pair -> pair.apartMm() <= least))
                .findFirst();
    }

    static boolean alike(PersonalShape one, PersonalShape other, Length kerf) {
        return of(List.of(one, other), kerf).isPresent();
    }
}
