package puzzleworkshop.letters;

import java.time.temporal.ChronoUnit;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.Order;
import puzzleworkshop.papers.Invoice;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.papers.OrderAccount;
import puzzleworkshop.payments.PaymentsAwaited;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;
import puzzleworkshop.workshop.WorkshopProfile;

/** Fills the fields of a letter from what is known of its order. */
@Component
class FieldValues {

    private final Workshop workshop;
    private final Invoices invoices;
    private final PaymentsAwaited awaited;
    private final ObjectProvider<LetterFacts> facts;
    private final SignedIn signedIn;
    private final Formatter figures;

    FieldValues(
            Workshop workshop,
            Invoices invoices,
            PaymentsAwaited awaited,
            ObjectProvider<LetterFacts> facts,
            SignedIn signedIn,
            Formatter figures) {
        this.workshop = workshop;
        this.invoices = invoices;
        this.awaited = awaited;
        this.facts = facts;
        this.signedIn = signedIn;
        this.figures = figures;
    }

    /** Those that the kind may use; amounts only for kinds that tell money, and for an owner. */
    Map<LetterField, String> of(Order order, LetterKind kind) {
        Map<LetterField, String> values = new EnumMap<>(LetterField.class);
        WorkshopProfile profile = workshop.profile();
        values.put(LetterField.CUSTOMER, order.customer().name());
        values.put(LetterField.ORDER, order.number());
        values.put(LetterField.PIECES, String.valueOf(order.puzzle().pieces()));
        values.put(LetterField.SIZE, figures.size(order.puzzle().finished()));
        values.put(LetterField.COPIES, String.valueOf(order.quantity()));
        values.put(LetterField.WORKSHOP, profile.name());
        values.put(LetterField.WORKSHOP_ADDRESS, profile.address());
        values.put(LetterField.PHONE, profile.phone());
        values.put(LetterField.EMAIL, profile.email());
        order.promised().ifPresent(day -> values.put(LetterField.PROMISED, figures.day(day)));
        values.put(LetterField.VALID_UNTIL, figures.day(order.validUntil()));
        if (kind.tellsMoney() && signedIn.isOwner()) {
            money(order, values);
        }
        facts.orderedStream().forEach(room -> values.putAll(room.of(order)));
        values.keySet().retainAll(kind.fields());
        return values;
    }

    private void money(Order order, Map<LetterField, String> values) {
        OrderAccount account = invoices.account(order.id());
        values.put(LetterField.PRICE, figures.money(order.price().gross()));
        values.put(LetterField.OPEN, figures.money(account.open()));
        values.put(LetterField.BANK, invoices.settings().bank());
        awaited.of(order.id()).ifPresent(asked -> values.put(LetterField.ASKED, figures.money(asked.amount())));
        Optional<Invoice> standing = account.standing();
        standing.ifPresent(invoice -> {
            values.put(LetterField.INVOICE, invoice.number());
            values.put(LetterField.PRICE, figures.money(invoice.gross()));
            values.put(LetterField.DUE, figures.day(invoice.dueOn()));
            long late = ChronoUnit.DAYS.between(invoice.dueOn(), workshop.today());
            if (late > 0) {
                values.put(LetterField.DAYS_LATE, String.valueOf(late));
            }
        });
        lastCredit(account).ifPresent(note -> {
            values.put(LetterField.CREDIT_NOTE, note.number());
            values.put(LetterField.CREDITED, figures.money(note.gross()));
        });
    }

    static Optional<Invoice> lastCredit(OrderAccount account) {
        return account.papers().reversed().stream()
                .filter(paper -> paper.series() == Invoice.Series.CREDIT_NOTE)
                .findFirst();
    }
}
