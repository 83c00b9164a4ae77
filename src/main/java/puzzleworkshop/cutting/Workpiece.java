package puzzleworkshop.cutting;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.measure.Sentence;

/**
 * What lies under the head, as far as it decides whether it may be cut at all.
 *
 * @param board its kind
 * @param past what happened to the board before
 * @param film what the sticker and laminate are made of, the worst of them
 * @param filmName what they are called, for the sentence; may be empty
 */
public record Workpiece(BoardKind board, BoardPast past, Film film, String filmName) {

    /** What happened to a board before it came to the rack. */
    public enum BoardPast {
        CLEAN,
        PAINTED,
        WET_GLUE,
        UNKNOWN
    }

    /** What is known of the film and how it holds. */
    public enum Film {
        /** No PVC, dry adhesive. */
        SAFE,
        PVC,
        WET_GLUE,
        UNKNOWN
    }

    public static Workpiece clean(BoardKind board) {
        return new Workpiece(board, BoardPast.CLEAN, Film.SAFE, "");
    }

    /** Why this must not be cut, a sentence for each reason; empty when it may. */
    public List<Sentence> forbidden() {
        List<Sentence> reasons = new ArrayList<>();
        if (past != BoardPast.CLEAN) {
            reasons.add(Sentence.of("cutting.forbidden.board." + past.name()));
        }
        if (film != Film.SAFE) {
            reasons.add(Sentence.of("cutting.forbidden.film." + film.name(), filmName));
        }
        return reasons;
    }
}
