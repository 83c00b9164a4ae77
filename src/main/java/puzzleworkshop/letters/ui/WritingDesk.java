package puzzleworkshop.letters.ui;

import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import puzzleworkshop.delivery.ui.ParcelLetters;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.letters.LetterKind;
import puzzleworkshop.letters.Letters;
import puzzleworkshop.letters.mail.MailAccounts;
import puzzleworkshop.orders.Order;
import puzzleworkshop.proofs.Proofs;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/** Where letters are begun: from an order's page, and from what happens to a parcel. */
@Component
class WritingDesk implements ParcelLetters {

    private final Letters letters;
    private final MailAccounts accounts;
    private final Proofs proofs;
    private final Workshop workshop;
    private final SignedIn signedIn;
    private final Formatter figures;

    WritingDesk(
            Letters letters,
            MailAccounts accounts,
            Proofs proofs,
            Workshop workshop,
            SignedIn signedIn,
            Formatter figures) {
        this.letters = letters;
        this.accounts = accounts;
        this.proofs = proofs;
        this.workshop = workshop;
        this.signedIn = signedIn;
        this.figures = figures;
    }

    @Override
    public void write(Order order, Occasion occasion, Runnable written) {
        LetterKind first = switch (occasion) {
            case READY -> LetterKind.READY_TO_COLLECT;
            case REMINDER -> LetterKind.COLLECT_REMINDER;
            case SENT -> LetterKind.ON_ITS_WAY;
            case ARRIVED -> LetterKind.THANK_YOU;
            case ANSWER -> LetterKind.COMPLAINT_ANSWER;
        };
        List<LetterKind> kinds = new ArrayList<>(letters.fitting(order.id()));
        kinds.remove(first);
        kinds.addFirst(first);
        open(order, kinds, written);
    }

    /** @param kinds from which to choose, the proposed one first */
    void open(Order order, List<LetterKind> kinds, Runnable written) {
        new LetterDialog(order, kinds, letters, accounts, proofs, workshop, signedIn, figures, written).open();
    }
}
