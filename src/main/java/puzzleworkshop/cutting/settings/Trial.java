package puzzleworkshop.cutting.settings;

import java.time.Instant;
import java.util.Optional;
import puzzleworkshop.measure.Length;

/**
 * One cut as evidence: what was dialled in and what came of it. Never changed afterwards.
 *
 * @param id given by the store
 * @param parameters what was dialled in; the passes are those that were really made
 * @param finding what came of it
 * @param source a try, a square of a test card, or a real cut
 * @param by who
 * @param at when
 * @param hasPhoto whether a photo is kept beside it
 */
public record Trial(
        long id, CutParameters parameters, Finding finding, Source source, String by, Instant at, boolean hasPhoto) {

    /** Where the evidence comes from. */
    public enum Source {
        TRY,
        TEST_CARD,
        CUT;

        public String textKey() {
            return "cutting.source." + name();
        }
    }

    /** Whether the beam went through the board. */
    public enum Result {
        /** The piece falls out by itself. */
        THROUGH,
        /** It hangs by fibres or in places. */
        PARTLY,
        /** It holds. */
        NOT_THROUGH;

        public String textKey() {
            return "cutting.result." + name();
        }
    }

    /**
     * What was seen.
     *
     * @param result through, partly, not
     * @param charring of the edge: 0 none, 1 light brown, 2 dark brown, 3 black, 4 black and crumbling or flamed
     * @param gapMeasured lens to work as measured, where it was
     * @param note in words, may be empty
     */
    public record Finding(Result result, int charring, Optional<Length> gapMeasured, String note) {

        /** Up to this charring an edge is sold. */
        public static final int ACCEPTABLE_CHARRING = 2;

        public static final int WORST_CHARRING = 4;

        public Finding {
            if (charring < 0 || charring > WORST_CHARRING) {
                throw new IllegalArgumentException("Charring runs from 0 to 4, not " + charring);
            }
            note = note == null ? "" : note.strip();
        }

        public static Finding of(Result result, int charring) {
            return new Finding(result, charring, Optional.empty(), "");
        }

        /** Through, with an edge that can be sold. */
        public boolean isGood() {
            return result == Result.THROUGH && charring <= ACCEPTABLE_CHARRING;
        }
    }

    /** How far from the lens gap it should have had, where it was measured: above zero is too high. */
    public double gapErrorMm() {
        return finding.gapMeasured()
                .map(gap -> gap.mm() - parameters.gap().mm())
                .orElse(0.0);
    }

    /** Whether the gap was right, as far as anybody measured it. */
    public boolean gapWasRight() {
        return Math.abs(gapErrorMm()) <= TrialEvidence.GAP_TOLERANCE_MM + 1e-9;
    }
}
