package puzzleworkshop.proofs;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.pattern.PieceLayout;
import puzzleworkshop.pattern.judged.Difficulty;

/**
 * What a customer sends to be changed.
 *
 * @param words their own; may be empty where something else is wished
 * @param places marked on the picture
 * @param years age of the child that it must not be too hard for
 */
public record CustomerWish(String words, List<MarkedPlace> places, Optional<Integer> years) {

    public CustomerWish {
        places = List.copyOf(places);
        if (places.size() > PieceLayout.MOST_KEPT_WHOLE) {
            throw new IllegalArgumentException(places.size() + " places marked are too many");
        }
        if (years.filter(age -> age < Difficulty.YOUNGEST || age > Difficulty.OLDEST)
                .isPresent()) {
            throw new IllegalArgumentException("No age of a child: " + years.get());
        }
    }

    public static CustomerWish of(String words) {
        return new CustomerWish(words, List.of(), Optional.empty());
    }

    /** Whether more is wished than words say. */
    public boolean isMoreThanWords() {
        return !places.isEmpty() || years.isPresent();
    }
}
