package puzzleworkshop.orders;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.workshop.Stage;

/**
 * One puzzle wish of one customer, made a number of times.
 *
 * @param number for people, such as 2026-0147
 * @param board what it is cut from
 * @param softAccepted the customer's written word that a soft picture will do; empty when not needed
 * @param approval absent until the customer (or the seller for them, at the counter) approved the picture
 * @param laser estimated time of the laser for all its puzzles
 * @param validUntil last day on which the quote holds
 * @param version rises with every change, to refuse a change made on an old view
 */
public record Order(
        OrderId id,
        String number,
        Customer customer,
        int quantity,
        Puzzle puzzle,
        BoardKind board,
        Optional<FramedPicture> picture,
        String softAccepted,
        Optional<Approval> approval,
        DeliveryTerms delivery,
        Minutes laser,
        AgreedPrice price,
        LocalDate validUntil,
        String note,
        OrderCourse course,
        long version) {

    public Optional<LocalDate> wantedBy() {
        return delivery.wantedBy();
    }

    public Optional<LocalDate> promised() {
        return delivery.promised();
    }

    public boolean rush() {
        return delivery.rush();
    }

    public Optional<Long> deliveryWay() {
        return delivery.way();
    }

    public OrderState state() {
        return course.state();
    }

    public Optional<Stage> next() {
        return course.next();
    }

    public Instant createdAt() {
        return course.createdAt();
    }

    public Optional<Instant> confirmedAt() {
        return course.confirmedAt();
    }

    public Optional<Instant> handedOverAt() {
        return course.handedOverAt();
    }

    /** Which order this is, with the number by which people know it. */
    public OrderRef ref() {
        return new OrderRef(id, number);
    }

    /** While it is a quote or before its picture is printed, what was agreed can be changed. */
    public boolean mayStillChange() {
        return state() == OrderState.QUOTE
                || state() == OrderState.CONFIRMED && next().equals(Optional.of(Stage.PRINT));
    }

    /** What still keeps it from being printed, when it is its turn. */
    public boolean waitsForApproval() {
        return state() == OrderState.CONFIRMED && approval.isEmpty();
    }

    public boolean waitsForPicture() {
        return picture.isEmpty() && (state() == OrderState.CONFIRMED || state() == OrderState.QUOTE);
    }
}
