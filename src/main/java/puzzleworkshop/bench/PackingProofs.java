package puzzleworkshop.bench;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.bench.PackingProof.Edge;
import puzzleworkshop.bench.PackingProof.ProofPhoto;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.camera.pieces.PieceCheck;
import puzzleworkshop.camera.pieces.PieceShape;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.history.OrderHistory;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.runtime.VersionedCache;

/** Counts the pieces of a finished puzzle in photos, names the missing ones, and keeps that as proof of what was packed. */
@Service
public class PackingProofs {

    /** A puzzle of 2,000 small pieces lies on about so many sheets. */
    public static final int MOST_PHOTOS = 20;

    private static final int SHAPES_KEPT = 8;

    private final PackingProofStore store;
    private final Orders orders;
    private final OrderHistory history;
    private final PatternCache patterns;
    private final Photos photos;
    private final Bookings bookings;
    private final Formatter figures;
    private final Clock clock;
    private final VersionedCache<PatternSpec, List<PieceShape>> shapes =
            VersionedCache.<PatternSpec, List<PieceShape>>ofMost(SHAPES_KEPT).restingOnTheQuestion();

    PackingProofs(
            PackingProofStore store,
            Orders orders,
            OrderHistory history,
            PatternCache patterns,
            Photos photos,
            Bookings bookings,
            Formatter figures,
            Clock clock) {
        this.store = store;
        this.orders = orders;
        this.history = history;
        this.patterns = patterns;
        this.photos = photos;
        this.bookings = bookings;
        this.figures = figures;
        this.clock = clock;
    }

    /**
     * One photo, measured.
     *
     * @param jpeg small enough to be shown and kept
     * @param scale pixels of the small one for each of the photo measured in
     */
    public record Taken(byte[] jpeg, int width, int height, double scale, PieceCheck.LaidPieces laid) {

        /** Where the pieces seen lie in the small photo. */
        public ProofPhoto photo(PieceCheck.Result result, int place) {
            List<Edge> edges = result.seen().stream()
                    .filter(piece -> piece.photo() == place)
                    .map(piece -> Edge.of(piece, scale))
                    .toList();
            return new ProofPhoto(width, height, edges);
        }
    }

    /**
     * Measures in one photo; takes seconds, so never in the screen's thread.
     *
     * @param file as the phone sends it
     * @param printScale of the measuring sheet, see {@code sheets.MeasuredOutlines.Printer}
     * @throws Refused when it cannot be measured in, with what to do
     */
    public Taken look(Order order, byte[] file, double printScale) {
        List<PieceShape> places = shapes(order);
        double thickness = order.board().thickness().mm();
        return photos.measured(
                file,
                read -> new Taken(
                        read.small(),
                        read.smallWidth(),
                        read.smallHeight(),
                        read.scale(),
                        PieceCheck.look(places, read.photo(), thickness, printScale)));
    }

    /** What photos of one puzzle say together. */
    public PieceCheck.Result result(Order order, List<Taken> taken) {
        return PieceCheck.result(shapes(order), taken.stream().map(Taken::laid).toList());
    }

    private List<PieceShape> shapes(Order order) {
        PatternSpec spec = order.puzzle().pattern();
        return shapes.get(spec, () -> PieceEdges.of(patterns.of(spec)));
    }

    /**
     * Keeps photos and count with the order.
     *
     * @param puzzle which of the order's puzzles, from 1
     * @throws Refused without a photo, or with too many
     */
    @Books
    @Transactional
    public PackingProof keep(BookingKey key, OrderId id, int puzzle, List<Taken> taken, String who) {
        Order order = orders.get(id);
        if (taken.isEmpty() || taken.size() > MOST_PHOTOS || puzzle < 1 || puzzle > order.quantity()) {
            throw new Refused("bench.pieces.photos", MOST_PHOTOS);
        }
        // before anything is locked: it may take a second for a large puzzle
        PieceCheck.Result result = result(order, taken);
        return bookings.once(
                key,
                "packing proof of " + order.number() + ", puzzle " + puzzle + ", photos " + taken.size(),
                () -> kept(order.id(), puzzle, taken, result, who),
                PackingProof::id,
                store::get);
    }

    private PackingProof kept(OrderId of, int puzzle, List<Taken> taken, PieceCheck.Result result, String who) {
        Order order = orders.lock(of);
        List<String> troubles = new ArrayList<>();
        result.troubles().stream().distinct().forEach(trouble -> troubles.add(figures.say(trouble)));
        long id = store.add(new PackingProof(
                0,
                order.id(),
                puzzle,
                order.puzzle().pieces(),
                result.seen().size(),
                result.foreign(),
                result.missing(),
                String.join(" ", troubles),
                taken.size(),
                clock.instant(),
                who));
        for (int i = 0; i < taken.size(); i++) {
            store.add(id, i, taken.get(i).jpeg(), taken.get(i).photo(result, i));
        }
        PackingProof proof = store.get(id);
        history.write(
                order.id(),
                who,
                Sentence.of(
                        proof.isComplete() ? "bench.pieces.history.all" : "bench.pieces.history.some",
                        proof.seen() - proof.foreign(),
                        proof.expected(),
                        Math.max(0, proof.expected() - (proof.seen() - proof.foreign()))));
        return proof;
    }

    /** Proofs of an order, newest first. */
    @Transactional(readOnly = true)
    public List<PackingProof> of(OrderId order) {
        return store.of(order);
    }

    /** Photos of a proof, without their content. */
    @Transactional(readOnly = true)
    public List<ProofPhoto> photos(long proof) {
        return store.photos(proof);
    }

    /** @param place of the photo in its proof, from 0 */
    @Transactional(readOnly = true)
    public Optional<byte[]> photo(long proof, int place) {
        return store.content(proof, place);
    }
}
