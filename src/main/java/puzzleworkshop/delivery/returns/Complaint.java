package puzzleworkshop.delivery.returns;

import java.time.Instant;
import java.util.Optional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.workshop.Stage;

/**
 * What a customer found wrong, or why something came back.
 *
 * @param byCustomer said on the customer's own page
 * @param stage where it most likely arose
 * @param words what was said
 * @param board what the puzzle was cut from, in words of then
 * @param setting with what it was cut; empty where no cut is on record
 * @param decision what was done about it; absent while nobody has decided
 */
public record Complaint(
        long id,
        OrderRef order,
        Instant at,
        String who,
        boolean byCustomer,
        Reason reason,
        Stage stage,
        String words,
        String board,
        String setting,
        Optional<Decision> decision) {

    /** Why; each with the stage at which it usually arises (common practice). */
    public enum Reason {
        PIECE_MISSING(Stage.PACK),
        PIECE_BROKEN(Stage.FINISH),
        PRINT_FAULT(Stage.PRINT),
        PEELING(Stage.STICK),
        CHARRED(Stage.CUT),
        DOES_NOT_FIT(Stage.CUT),
        DAMAGED_ON_THE_WAY(Stage.HAND_OVER),
        WRONG_PUZZLE(Stage.PACK),
        CHANGED_MIND(Stage.HAND_OVER),
        OTHER(Stage.HAND_OVER);

        private final Stage usually;

        Reason(Stage usually) {
            this.usually = usually;
        }

        public Stage usually() {
            return usually;
        }

        public String textKey() {
            return "delivery.reason." + name();
        }
    }

    /** What is done about it. */
    public enum Remedy {
        /** Made again from the print on. */
        REMAKE,
        /** Money back, by a credit note. */
        REFUND,
        /** One piece made again. */
        PIECE_AGAIN,
        NOTHING;

        public String textKey() {
            return "delivery.remedy." + name();
        }
    }

    /** Who bears what sending back and again costs. */
    public enum PostageBy {
        WORKSHOP,
        CUSTOMER;

        public String textKey() {
            return "delivery.postage-by." + name();
        }
    }

    /**
     * What was decided.
     *
     * @param postage what the workshop bears of it; absent where the customer does
     * @param answer to the customer, in words
     */
    public record Decision(
            Remedy remedy, PostageBy postageBy, Optional<Money> postage, String answer, Instant at, String who) {}
}
