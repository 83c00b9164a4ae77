package puzzleworkshop.delivery.returns;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.delivery.returns.Complaint.Reason;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/**
 * Complaints and returns: what was said, by whom, with which photos. What is done about it is decided in {@link Remedies}.
 */
@Service
public class Complaints {

    /** One customer's page takes no more: it is open to whoever has the link. */
    private static final int MOST_BY_CUSTOMER = 5;

    /** Of one complaint, for the same reason. */
    public static final int MOST_PHOTOS_BY_CUSTOMER = 3;

    private static final int MOST_PHOTOS = 12;
    private static final int LONGEST = 2000;

    private final ComplaintStore store;
    private final Orders orders;
    private final CutJobs cuts;
    private final Photos photos;
    private final Workshop workshop;
    private final AfterCommit afterCommit;
    private final Clock clock;

    Complaints(
            ComplaintStore store,
            Orders orders,
            CutJobs cuts,
            Photos photos,
            Workshop workshop,
            AfterCommit afterCommit,
            Clock clock) {
        this.store = store;
        this.orders = orders;
        this.cuts = cuts;
        this.photos = photos;
        this.workshop = workshop;
        this.afterCommit = afterCommit;
        this.clock = clock;
    }

    /** What is said of one who complains: a reason, where it arose, words. */
    public record Report(Reason reason, Stage stage, String words) {}

    @Transactional(readOnly = true)
    public List<Complaint> of(OrderId order) {
        return store.of(order);
    }

    @Transactional(readOnly = true)
    public List<Complaint> undecided() {
        return store.undecided();
    }

    /** Reported on a day or later, oldest first. */
    @Transactional(readOnly = true)
    public List<Complaint> since(LocalDate day) {
        return store.since(start(day));
    }

    /** How many orders left on each board since a day. */
    @Transactional(readOnly = true)
    public Map<String, Integer> leftOnBoards(LocalDate since) {
        return store.left(start(since));
    }

    private Instant start(LocalDate day) {
        return day.atStartOfDay(workshop.zone()).toInstant();
    }

    /** Keeps what somebody at the workshop was told. */
    @Transactional
    public long report(OrderId id, Report report, String who) {
        return write(orders.lock(id), report, who, false);
    }

    /** Keeps what the customer says on their page. */
    @Transactional
    public long reportedByCustomer(OrderId id, String words) {
        Order order = orders.lock(id);
        long before = store.of(id).stream().filter(Complaint::byCustomer).count();
        if (before >= MOST_BY_CUSTOMER) {
            throw new Refused("delivery.complaint.enough");
        }
        if (words.isBlank()) {
            throw new Refused("delivery.complaint.words", LONGEST);
        }
        return write(
                order,
                new Report(Reason.OTHER, Reason.OTHER.usually(), words),
                order.customer().name(),
                true);
    }

    private long write(Order order, Report report, String who, boolean byCustomer) {
        if (order.handedOverAt().isEmpty()) {
            throw new Refused("delivery.complaint.here", order.number());
        }
        String words = report.words().replaceAll("[\\p{Cc}&&[^\\n\\r\\t]]", "").strip();
        if (words.length() > LONGEST) {
            throw new Refused("delivery.complaint.words", LONGEST);
        }
        long id = store.add(new Complaint(
                0,
                order.ref(),
                clock.instant(),
                who,
                byCustomer,
                report.reason(),
                report.stage(),
                words,
                board(order.board().material(), order.board().thickness().mm()),
                cuts.lastFor(order.id()).map(job -> words(job.setting())).orElse(""),
                Optional.empty()));
        orders.note(
                order.id(),
                Sentence.of(
                        "delivery.history.complaint",
                        Sentence.of(report.reason().textKey()),
                        words),
                who);
        afterCommit.tell(new ComplaintChanged(order.id()));
        return id;
    }

    static String board(String material, double thicknessMm) {
        return String.format(Locale.ROOT, "%s, %.1f mm", material, thicknessMm);
    }

    static String words(CutSetting setting) {
        return String.format(
                Locale.ROOT,
                "%s, %.0f mm/min, %s %%, %d ×",
                setting.machine().name(),
                setting.speed().mmPerSecond() * 60,
                setting.parameters().power().hundredths().toPlainString(),
                setting.passes());
    }

    /** Says otherwise why and where, once somebody has looked; what was decided stays decided. */
    @Transactional
    public void classify(long complaint, Reason reason, Stage stage) {
        Complaint now = store.lock(complaint).orElseThrow(() -> new Refused("delivery.complaint.unknown"));
        if (now.reason() != reason || now.stage() != stage) {
            store.classify(complaint, reason, stage);
            afterCommit.tell(new ComplaintChanged(now.order().id()));
        }
    }

    /** The customer says that all is well. */
    @Transactional
    public void allIsWell(OrderId id) {
        Order order = orders.lock(id);
        if (!store.isWell(id)) {
            store.well(id, clock.instant());
            orders.note(
                    id, Sentence.of("delivery.history.well"), order.customer().name());
        }
    }

    @Transactional(readOnly = true)
    public boolean isWell(OrderId id) {
        return store.isWell(id);
    }

    /**
     * Keeps a photo of what is wrong.
     *
     * @throws Refused when it is no photo, or too large, or there are enough
     */
    @Transactional
    public long photo(long complaint, byte[] file, String who) {
        if (store.photos(complaint).size() >= MOST_PHOTOS) {
            throw new Refused("delivery.complaint.photos", MOST_PHOTOS);
        }
        return store.addPhoto(complaint, Photos.MEDIA_TYPE, photos.kept(file), who, clock.instant());
    }

    /**
     * Keeps a photo that the customer sends with what they said on their page.
     *
     * @throws Refused when it is no photo, too large, one too many, or nothing of theirs waits for an answer
     */
    @Transactional
    public long photoByCustomer(OrderId id, long complaint, byte[] file) {
        Order order = orders.lock(id);
        boolean theirs = store.of(id).stream()
                .anyMatch(one -> one.id() == complaint
                        && one.byCustomer()
                        && one.decision().isEmpty());
        if (!theirs) {
            throw new Refused("delivery.complaint.unknown");
        }
        if (store.photos(complaint).size() >= MOST_PHOTOS_BY_CUSTOMER) {
            throw new Refused("delivery.complaint.photos", MOST_PHOTOS_BY_CUSTOMER);
        }
        long photo = photo(complaint, file, order.customer().name());
        afterCommit.tell(new ComplaintChanged(id));
        return photo;
    }

    @Transactional(readOnly = true)
    public List<Long> photos(long complaint) {
        return store.photos(complaint);
    }

    @Transactional(readOnly = true)
    public Optional<byte[]> photo(long id) {
        return store.photo(id);
    }

    /** Whether something can be said about an order: it has left the house. */
    public static boolean mayComplain(Order order) {
        return order.handedOverAt().isPresent() && order.state() != OrderState.CANCELLED;
    }
}
