package puzzleworkshop.cutting.jobs;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.sheets.board.BoardContamination;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.supplies.LaserFacts;

/**
 * What lies under the head, as far as it decides whether it may be cut at all.
 *
 * @param board its kind
 * @param past what happened to the board before
 * @param film what the sticker and laminate are made of, the worst of them
 * @param filmName what they are called, for the sentence; may be empty
 */
public record Workpiece(BoardKind board, BoardContamination past, Film film, String filmName) {

    /** What is known of the film and how it holds. */
    public enum Film {
        /** No PVC, dry adhesive. */
        SAFE,
        PVC,
        WET_GLUE,
        UNKNOWN;

        /** By the facts that Supplies keeps of a film; what is not known counts as the worst. */
        public static Film of(LaserFacts facts) {
            if (facts.pvc() == LaserFacts.Pvc.PVC) {
                return PVC;
            }
            if (facts.adhesive() == LaserFacts.Adhesive.WET) {
                return WET_GLUE;
            }
            boolean known = facts.pvc() == LaserFacts.Pvc.FREE && facts.adhesive() != LaserFacts.Adhesive.UNKNOWN;
            return known ? SAFE : UNKNOWN;
        }
    }

    /** A board of the rack with a film on it. */
    public static Workpiece of(BoardFacts facts, Film film, String filmName) {
        return new Workpiece(BoardKind.of(facts), facts.past(), film, filmName);
    }

    public static Workpiece clean(BoardKind board) {
        return new Workpiece(board, BoardContamination.CLEAN, Film.SAFE, "");
    }

    /** Why this must not be cut, a sentence for each reason; empty when it may. */
    public List<Sentence> forbidden() {
        List<Sentence> reasons = new ArrayList<>();
        if (!past.isFitForCutting()) {
            reasons.add(Sentence.of("cutting.forbidden.board." + past.name()));
        }
        if (film != Film.SAFE) {
            reasons.add(Sentence.of("cutting.forbidden.film." + film.name(), filmName));
        }
        return reasons;
    }
}
