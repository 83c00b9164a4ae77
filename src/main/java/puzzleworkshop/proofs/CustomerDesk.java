package puzzleworkshop.proofs;

import java.io.IOException;
import java.io.InputStream;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.artwork.PrintLimits;
import puzzleworkshop.artwork.Resolution;
import puzzleworkshop.artwork.Resolution.Verdict;
import puzzleworkshop.artwork.UnusedPictureCleanup;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.preview.PreviewRenderer;
import puzzleworkshop.runtime.RateLimiter;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/**
 * What a customer can do with a link: everything goes by its token, and reaches that one order only. Wrong tokens are
 * counted by the address they come from, pictures and wishes by the link.
 */
@Service
public class CustomerDesk {

    private static final int WRONG_TOKENS = 20;
    private static final int PICTURES_AN_HOUR = 10;
    private static final int PICTURES_A_DAY = 30;
    private static final int WISHES_A_DAY = 20;
    private static final int LONGEST_NAME = 120;

    private final ProofStore store;
    private final Orders orders;
    private final Pictures pictures;
    private final PreviewRenderer painter;
    private final Workshop workshop;
    private final UnusedPictureCleanup unused;
    private final Clock clock;
    private final RateLimiter wrongTokens;
    private final RateLimiter picturesAnHour;
    private final RateLimiter picturesADay;
    private final RateLimiter wishes;

    CustomerDesk(
            ProofStore store,
            Orders orders,
            Pictures pictures,
            PreviewRenderer painter,
            Workshop workshop,
            UnusedPictureCleanup unused,
            Clock clock) {
        this.unused = unused;
        this.store = store;
        this.orders = orders;
        this.pictures = pictures;
        this.painter = painter;
        this.workshop = workshop;
        this.clock = clock;
        this.wrongTokens = new RateLimiter(WRONG_TOKENS, Duration.ofHours(1), clock);
        this.picturesAnHour = new RateLimiter(PICTURES_AN_HOUR, Duration.ofHours(1), clock);
        this.picturesADay = new RateLimiter(PICTURES_A_DAY, Duration.ofDays(1), clock);
        this.wishes = new RateLimiter(WISHES_A_DAY, Duration.ofDays(1), clock);
    }

    /**
     * One order as its customer sees it.
     *
     * @param fingerprint of picture, crop and pattern; empty while there is no picture
     * @param resolution of the picture at the finished size
     */
    public record Sight(
            Order order,
            Optional<Picture> picture,
            String fingerprint,
            Optional<Resolution> resolution,
            PrintLimits limits) {

        /** Whether the picture is so coarse that the customer must say that it will do. */
        public boolean needsWordOnSoftness() {
            return resolution.map(r -> r.verdict() == Verdict.REFUSE).orElse(false);
        }
    }

    /**
     * @param from the address the request came from
     * @throws Refused with the same sentence whether the link is unknown, expired or withdrawn
     */
    public Sight look(Token token, String from) {
        ProofLink link = enter(token, from);
        store.seen(link.id(), clock.instant());
        return sight(orders.get(link.order()));
    }

    /** Whether the link shows anything; counted like every look, but not as one of the customer's. */
    boolean opens(Token token, String from) {
        try {
            enter(token, from);
            return true;
        } catch (Refused closed) {
            return false;
        }
    }

    /** A picture with the fingerprint of what it shows; of the whole picture that of its file. */
    record Face(byte[] jpeg, String fingerprint) {}

    /** The picture as framed, with cut lines. */
    Face face(Token token, String from, int px) {
        Order order = orders.get(enter(token, from).order());
        String fingerprint = order.picture()
                .map(framed -> ApprovedSnapshot.of(pictures.get(framed.picture()), framed, order.puzzle())
                        .fingerprint())
                .orElse("none");
        return new Face(painter.jpeg(order.puzzle(), order.picture(), px), fingerprint);
    }

    /** The whole picture, for framing it. */
    Optional<Face> picture(Token token, String from, int px) {
        Order order = orders.get(enter(token, from).order());
        return order.picture()
                .flatMap(framed -> pictures.rendition(framed.picture(), px))
                .map(copy -> new Face(copy.jpeg(), pictures.get(copy.picture()).sha256()));
    }

    /** Takes a picture in and frames it to fill the puzzle; one that was there before is replaced. */
    public Sight send(Token token, String from, String fileName, InputStream content) throws IOException {
        ProofLink link = enter(token, from);
        requireOpen(orders.get(link.order()));
        String key = Long.toString(link.id());
        if (!picturesAnHour.pass(key) || !picturesADay.pass(key)) {
            throw new Refused("proofs.too-many-pictures");
        }
        Picture taken = pictures.take(fileName, content);
        Order order = orders.get(link.order());
        Crop crop = Crop.filling(taken, order.puzzle().finished().aspect());
        Sight sight = sight(orders.reframe(order.id(), new FramedPicture(taken.id(), crop), who(order)));
        // Thirty a day of 50 MB each must not stay for a month.
        order.picture().ifPresent(replaced -> unused.clear(replaced.picture()));
        return sight;
    }

    /** Frames the picture that is there otherwise. */
    @Transactional
    public Sight frame(Token token, String from, Crop crop) {
        Order order = orders.lock(enter(token, from).order());
        requireOpen(order);
        FramedPicture framed = order.picture().orElseThrow(() -> new Refused("proofs.no-picture"));
        if (!crop.hasAspect(
                pictures.get(framed.picture()), order.puzzle().finished().aspect())) {
            throw new Refused("proofs.changed-meanwhile");
        }
        return sight(orders.reframe(order.id(), new FramedPicture(framed.picture(), crop), who(order)));
    }

    /**
     * Approves what the customer has seen; it is held fast by its fingerprint.
     *
     * @param seen the fingerprint of what was on the page
     * @param name who approves
     * @param mayUse the customer may use the picture
     * @param softWillDo the customer takes a coarse picture as it is
     * @throws Refused when the order looks otherwise by now, or a tick is missing
     */
    @Transactional
    public Sight approve(Token token, String from, String seen, String name, boolean mayUse, boolean softWillDo) {
        ProofLink link = enter(token, from);
        Order order = orders.lock(link.order());
        requireOpen(order);
        Sight sight = sight(order);
        FramedPicture framed = order.picture().orElseThrow(() -> new Refused("proofs.no-picture"));
        String by = plain(name);
        if (!sight.fingerprint().equals(seen)) {
            throw new Refused("proofs.changed-meanwhile");
        }
        if (!mayUse) {
            throw new Refused("proofs.may-use.missing");
        }
        if (by.isEmpty() || by.length() > LONGEST_NAME) {
            throw new Refused("proofs.name.missing");
        }
        if (sight.needsWordOnSoftness() && !softWillDo) {
            throw new Refused("proofs.soft.missing");
        }
        if (order.approval().isPresent()) {
            return sight;
        }
        if (sight.needsWordOnSoftness()) {
            orders.acceptSoft(
                    order.id(),
                    by + ", " + Math.round(sight.resolution().orElseThrow().ppi()) + " ppi",
                    who(order));
        }
        ApprovedSnapshot shown = ApprovedSnapshot.of(sight.picture().orElseThrow(), framed, order.puzzle());
        store.addApproval(link, clock.instant(), by, shown, framed.picture());
        return sight(orders.approve(order.id(), by, who(order)));
    }

    /** Writes down what is to be changed. */
    @Transactional
    public void wish(Token token, String from, CustomerWish wish) {
        ProofLink link = enter(token, from);
        CustomerWish said = new CustomerWish(plain(wish.words()), wish.places(), wish.years());
        int length = said.words().length();
        if (length == 0 && !said.isMoreThanWords() || length > ProofWish.LONGEST) {
            throw new Refused("proofs.wish.missing", ProofWish.LONGEST);
        }
        if (!wishes.pass(Long.toString(link.id()))) {
            throw new Refused("proofs.too-many-wishes");
        }
        Order order = orders.lock(link.order());
        if (!said.places().isEmpty() && order.picture().isEmpty()) {
            throw new Refused("proofs.no-picture");
        }
        store.addWish(link, clock.instant(), said, order.picture().map(FramedPicture::picture));
        if (length > 0) {
            orders.note(order.id(), Sentence.of("proofs.history.wish", said.words()), who(order));
        }
        if (!said.places().isEmpty()) {
            orders.note(
                    order.id(),
                    Sentence.of("proofs.history.marked", said.places().size()),
                    who(order));
        }
        said.years().ifPresent(age -> orders.note(order.id(), Sentence.of("proofs.history.years", age), who(order)));
    }

    /** Without characters that no one types: line breaks and tabs stay. */
    private static String plain(String typed) {
        return typed.replaceAll("[\\p{Cc}&&[^\\n\\r\\t]]", "").strip();
    }

    private ProofLink enter(Token token, String from) {
        if (!wrongTokens.isOpen(from)) {
            throw new Refused("proofs.wait");
        }
        Optional<ProofLink> link = token.isWellFormed() ? store.byToken(token.sha256()) : Optional.empty();
        if (link.isEmpty()) {
            wrongTokens.pass(from);
        }
        return link.filter(l -> l.isOpen(clock.instant())).orElseThrow(() -> new Refused("proofs.closed"));
    }

    private static void requireOpen(Order order) {
        if (!order.mayStillChange()) {
            throw new Refused("proofs.too-late");
        }
    }

    private Sight sight(Order order) {
        TradeNumbers numbers = workshop.tradeNumbers();
        PrintLimits limits = new PrintLimits(numbers.sharpPpi(), numbers.goodPpi(), numbers.softPpi());
        Optional<Picture> picture = order.picture().flatMap(framed -> pictures.find(framed.picture()));
        String fingerprint = picture.map(
                        p -> ApprovedSnapshot.of(p, order.picture().orElseThrow(), order.puzzle())
                                .fingerprint())
                .orElse("");
        Optional<Resolution> resolution = picture.map(p -> Resolution.judge(
                p, order.picture().orElseThrow().crop(), order.puzzle().finished(), numbers.overhang(), limits));
        return new Sight(order, picture, fingerprint, resolution, limits);
    }

    private static String who(Order order) {
        return order.customer().name();
    }
}
