package puzzleworkshop.letters;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.ParcelState;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.returns.Complaint;
import puzzleworkshop.delivery.returns.Complaints;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.delivery.sending.WayKind;
import puzzleworkshop.orders.Order;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.papers.OrderAccount;
import puzzleworkshop.workshop.Stage;

/** Which letters fit an order as it stands: whether it is collected or sent decides what the customer hears at the door. */
@Component
class FittingLetters {

    private final LetterStore store;
    private final Parcels parcels;
    private final SendingWays ways;
    private final Complaints complaints;
    private final Invoices invoices;

    FittingLetters(LetterStore store, Parcels parcels, SendingWays ways, Complaints complaints, Invoices invoices) {
        this.store = store;
        this.parcels = parcels;
        this.ways = ways;
        this.complaints = complaints;
        this.invoices = invoices;
    }

    /** The likeliest first. */
    List<LetterKind> of(Order order) {
        List<LetterKind> kinds = new ArrayList<>();
        switch (order.state()) {
            case QUOTE -> kinds.add(LetterKind.QUOTE);
            case CONFIRMED -> underWay(order, kinds);
            case HANDED_OVER, CLOSED -> kinds.addAll(outOfTheHouse(order));
            case CANCELLED -> {}
        }
        boolean open = switch (order.state()) {
            case QUOTE, CONFIRMED -> true;
            default -> false;
        };
        if (open && order.picture().isEmpty()) {
            kinds.addFirst(LetterKind.PICTURE_WANTED);
        } else if (open && order.approval().isEmpty()) {
            kinds.add(LetterKind.PROOF_READY);
            kinds.add(LetterKind.APPROVAL_WANTED);
        }
        answer(order, kinds);
        OrderAccount account = invoices.account(order.id());
        if (account.standing().isPresent()) {
            kinds.add(LetterKind.INVOICE);
            if (account.open().isPositive()) {
                kinds.addAll(List.of(LetterKind.FIRST_REMINDER, LetterKind.SECOND_REMINDER, LetterKind.LAST_REMINDER));
            }
        }
        if (FieldValues.lastCredit(account).isPresent()) {
            kinds.add(LetterKind.CREDIT_NOTE);
        }
        return kinds;
    }

    private void underWay(Order order, List<LetterKind> kinds) {
        boolean atTheDoor = order.next().map(next -> next == Stage.HAND_OVER).orElse(true);
        if (atTheDoor) {
            Optional<Parcel> parcel = parcels.now(order);
            if (isCollected(order, parcel)) {
                kinds.add(LetterKind.READY_TO_COLLECT);
                parcel.filter(one -> one.state() == ParcelState.READY)
                        .ifPresent(waits -> kinds.add(LetterKind.COLLECT_REMINDER));
            } else {
                kinds.add(LetterKind.ON_ITS_WAY);
            }
        } else {
            kinds.add(LetterKind.ON_TIME);
        }
        kinds.addAll(List.of(LetterKind.PAYMENT_AWAITED, LetterKind.MATERIAL_AWAITED));
    }

    private List<LetterKind> outOfTheHouse(Order order) {
        Optional<Parcel> parcel = parcels.now(order);
        if (isCollected(order, parcel)) {
            return List.of(LetterKind.THANK_YOU);
        }
        return parcel.map(Parcel::state).filter(ParcelState::hasArrived).isPresent()
                ? List.of(LetterKind.THANK_YOU, LetterKind.ON_ITS_WAY)
                : List.of(LetterKind.ON_ITS_WAY, LetterKind.THANK_YOU);
    }

    private boolean isCollected(Order order, Optional<Parcel> parcel) {
        return parcel.map(Parcel::kind)
                        .orElseGet(() -> ways.orUsual(order.deliveryWay()).kind())
                == WayKind.COLLECTION;
    }

    /** First of all while the customer was told nothing of what was decided last. */
    private void answer(Order order, List<LetterKind> kinds) {
        complaints.of(order.id()).stream()
                .flatMap(complaint -> complaint.decision().stream())
                .map(Complaint.Decision::at)
                .reduce((before, last) -> last)
                .ifPresent(decided -> {
                    boolean told = store.of(order.id()).stream()
                            .anyMatch(letter -> letter.kind() == LetterKind.COMPLAINT_ANSWER
                                    && letter.at().isAfter(decided));
                    kinds.add(told ? kinds.size() : 0, LetterKind.COMPLAINT_ANSWER);
                });
    }
}
