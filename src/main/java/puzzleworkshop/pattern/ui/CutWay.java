package puzzleworkshop.pattern.ui;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The ways to cut that have a page of their own in Draw a pattern. */
enum CutWay {
    PLAIN,
    UNEVEN,
    FACES,
    ROUND,
    HEART,
    SHAPES,
    NAME,
    CHILDREN;

    /** As it stands in the page's address. */
    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    static Optional<CutWay> of(String word) {
        return Arrays.stream(values()).filter(way -> way.word().equals(word)).findFirst();
    }
}
