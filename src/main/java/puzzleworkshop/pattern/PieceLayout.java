package puzzleworkshop.pattern;

import java.util.List;

/**
 * In what the pieces of a grid differ from rows and columns of one size. Known from design 2 on.
 *
 * @param uneven rows and columns of differing width: pieces up to about twice as large as others
 * @param keptWhole places that no line may cut; lines move out of their way, and pieces grow together where they cannot
 */
public record PieceLayout(boolean uneven, List<KeptWhole> keptWhole) {

    /** Of places kept whole; more would leave no puzzle. */
    public static final int MOST_KEPT_WHOLE = 12;

    public static final PieceLayout PLAIN = new PieceLayout(false, List.of());
    public static final PieceLayout UNEVEN = new PieceLayout(true, List.of());

    public PieceLayout {
        keptWhole = List.copyOf(keptWhole);
        if (keptWhole.size() > MOST_KEPT_WHOLE) {
            throw new IllegalArgumentException(keptWhole.size() + " places kept whole are too many");
        }
    }

    public static PieceLayout of(boolean uneven, List<KeptWhole> places) {
        return !uneven && places.isEmpty() ? PLAIN : new PieceLayout(uneven, places);
    }

    public boolean isPlain() {
        return !uneven && keptWhole.isEmpty();
    }
}
