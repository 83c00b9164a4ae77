package puzzleworkshop.letters;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.delivery.ParcelJourney;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.letters.mail.MailAddress;
import puzzleworkshop.letters.mail.MailDesk;
import puzzleworkshop.letters.mail.Message;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/** Letters about orders: proposed, kept with their order, and given to the outbox. Letters that tell money are the owner's. */
@Service
public class Letters {

    /** The secret part of a customer's link. */
    private static final Pattern SECRET = Pattern.compile("(/p/)[A-Za-z0-9_-]{20,}");

    private final LetterStore store;
    private final Wordings wordings;
    private final FieldValues values;
    private final LetterParts parts;
    private final FittingLetters fitting;
    private final Parcels parcels;
    private final ParcelJourney journey;
    private final MailDesk mail;
    private final Orders orders;
    private final Bookings bookings;
    private final Workshop workshop;
    private final SignedIn signedIn;
    private final AfterCommit afterCommit;
    private final Clock clock;

    Letters(
            LetterStore store,
            Wordings wordings,
            FieldValues values,
            LetterParts parts,
            FittingLetters fitting,
            Parcels parcels,
            ParcelJourney journey,
            MailDesk mail,
            Orders orders,
            Bookings bookings,
            Workshop workshop,
            SignedIn signedIn,
            AfterCommit afterCommit,
            Clock clock) {
        this.store = store;
        this.wordings = wordings;
        this.values = values;
        this.parts = parts;
        this.fitting = fitting;
        this.parcels = parcels;
        this.journey = journey;
        this.mail = mail;
        this.orders = orders;
        this.bookings = bookings;
        this.workshop = workshop;
        this.signedIn = signedIn;
        this.afterCommit = afterCommit;
        this.clock = clock;
    }

    /**
     * The letter as its wording has it.
     *
     * @param known fields that only the caller knows: another day, the link that was just made
     * @throws Refused when it tells money and the signed-in person is no owner, or its paper does not exist
     */
    @Transactional
    public Draft draft(OrderId id, LetterKind kind, Map<LetterField, String> known) {
        allow(kind);
        Order order = orders.get(id);
        return filled(order, wordings.of(kind), known, parts.papers(order, kind));
    }

    /** A wording that need not be kept yet, filled in from a real order; nothing is made for it. */
    public Draft preview(OrderId id, Wording wording) {
        allow(wording.kind());
        return filled(orders.get(id), wording, Map.of(), List.of());
    }

    private Draft filled(Order order, Wording wording, Map<LetterField, String> known, List<Message.Part> papers) {
        Map<LetterField, String> all = new EnumMap<>(LetterField.class);
        all.putAll(values.of(order, wording.kind()));
        all.putAll(known);
        Wording.Filled filled = wording.filled(all);
        return new Draft(
                order.id(),
                wording.kind(),
                order.customer().contact(),
                filled.subject(),
                filled.body(),
                filled.missing(),
                papers);
    }

    /** As the customer's mail program shows it, in one page. */
    public String page(Draft draft) {
        return parts.page(orders.get(draft.order()), draft.subject(), draft.body());
    }

    /** Keeps a letter that a person sent themselves: copied, shared, or with their own mail program. */
    @Books
    @Transactional
    public long byHand(BookingKey key, Draft draft) {
        return bookings.once(
                key,
                "letter by hand " + draft.order() + " " + draft.kind() + " " + draft.body(),
                () -> keep(draft, Letter.Way.BY_HAND),
                made -> made,
                made -> made);
    }

    /**
     * Gives a letter to the outbox.
     *
     * @throws Refused when no mail server is set up or the customer's contact is no e-mail address
     */
    @Books
    @Transactional
    public long send(BookingKey key, Draft draft) {
        return bookings.once(
                key,
                "letter by mail " + draft.order() + " " + draft.kind() + " " + draft.body(),
                () -> {
                    String to = MailAddress.of(draft.to()).orElseThrow(() -> new Refused("letters.send.no-address"));
                    long letter = keep(draft, Letter.Way.MAIL);
                    Order order = orders.get(draft.order());
                    mail.put(letter, parts.message(order, to, draft));
                    return letter;
                },
                made -> made,
                made -> made);
    }

    /** What planning told a customer, in whatever way; that it was told stands in the history already. */
    void keepTold(Draft draft) {
        add(draft, Letter.Way.BY_HAND);
    }

    /** Newest first; those that tell money only for an owner. */
    public List<Letter> of(OrderId order) {
        return store.of(order).stream().filter(this::mayBeSeen).toList();
    }

    /** Letters that could not go, or not yet. */
    public List<Letter> withFaults() {
        return store.all(mail.withFaults()).stream().filter(this::mayBeSeen).toList();
    }

    /** The e-mail address that a customer's contact is, when it is one. */
    public static Optional<String> mailOf(String contact) {
        return MailAddress.of(contact);
    }

    private boolean mayBeSeen(Letter letter) {
        return signedIn.isOwner() || !letter.kind().tellsMoney();
    }

    private void allow(LetterKind kind) {
        if (kind.tellsMoney() && !signedIn.isOwner()) {
            throw new Refused("letters.owner-only");
        }
    }

    private long keep(Draft draft, Letter.Way way) {
        allow(draft.kind());
        if (draft.kind() == LetterKind.COLLECT_REMINDER) {
            // Before the order's own lock: this locks all orders of the parcel, lowest first.
            parcels.now(orders.get(draft.order()))
                    .ifPresent(parcel -> journey.reminded(parcel.id(), draft.order(), signedIn.name()));
        }
        long id = add(draft, way);
        orders.note(
                draft.order(),
                Sentence.of(
                        way == Letter.Way.MAIL ? "letters.history.mail" : "letters.history.by-hand",
                        Sentence.of(draft.kind().textKey())),
                signedIn.name());
        return id;
    }

    private long add(Draft draft, Letter.Way way) {
        if (draft.subject().isBlank() || draft.body().isBlank()) {
            throw new Refused("letters.wording.empty");
        }
        if (draft.subject().length() > Wording.MOST_SUBJECT || draft.body().length() > Wording.MOST_BODY) {
            throw new Refused("letters.wording.long", Wording.MOST_BODY);
        }
        orders.lock(draft.order());
        Instant now = clock.instant();
        long id = store.add(
                draft.order(),
                draft.kind(),
                way,
                draft.to(),
                draft.subject(),
                SECRET.matcher(draft.body()).replaceAll("$1…"),
                draft.papers().stream().map(Message.Part::name).collect(Collectors.joining(", ")),
                now,
                LocalDate.ofInstant(now, workshop.zone()),
                signedIn.name());
        afterCommit.tell(new LettersChanged());
        return id;
    }

    /** Kinds that fit the order as it stands, the likeliest first. */
    public List<LetterKind> fitting(OrderId id) {
        Order order = orders.get(id);
        List<LetterKind> kinds = new ArrayList<>(fitting.of(order));
        if (!signedIn.isOwner()) {
            kinds.removeIf(LetterKind::tellsMoney);
        }
        return kinds;
    }
}
