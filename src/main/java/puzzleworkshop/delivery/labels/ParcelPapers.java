package puzzleworkshop.delivery.labels;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.openpdf.text.Document;
import org.openpdf.text.pdf.PdfTemplate;
import org.openpdf.text.pdf.PdfWriter;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.delivery.address.PostalAddress;
import puzzleworkshop.delivery.boxes.Boxes;
import puzzleworkshop.delivery.boxes.PackedWeight;
import puzzleworkshop.delivery.sending.ParcelMeasure;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.UnitSystem;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.preview.PreviewRenderer;
import puzzleworkshop.orders.preview.PuzzleDifficulty;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.pattern.smallparts.SmallParts;
import puzzleworkshop.pattern.smallparts.SmallPartsVerdict;
import puzzleworkshop.workshop.Workshop;
import puzzleworkshop.workshop.WorkshopProfile;

/** Everything that is printed for an order's parcel, in one PDF, or its box labels alone. */
@Service
public class ParcelPapers {

    private static final int FACE_PIXELS = 900;
    private static final Size CARD = Size.mm(105, 148);
    private static final Size CARD_IN_INCHES = Size.mm(101.6, 152.4);
    private static final Size A4 = Size.mm(210, 297);
    private static final Size LETTER = Size.mm(215.9, 279.4);

    private final LabelStore store;
    private final Orders orders;
    private final Parcels parcels;
    private final SendingWays ways;
    private final Addresses addresses;
    private final Boxes boxes;
    private final Customs customs;
    private final PreviewRenderer faces;
    private final PatternCache patterns;
    private final PuzzleDifficulty difficulty;
    private final Workshop workshop;
    private final Formatter figures;

    ParcelPapers(
            LabelStore store,
            Orders orders,
            Parcels parcels,
            SendingWays ways,
            Addresses addresses,
            Boxes boxes,
            Customs customs,
            PreviewRenderer faces,
            PatternCache patterns,
            PuzzleDifficulty difficulty,
            Workshop workshop,
            Formatter figures) {
        this.store = store;
        this.orders = orders;
        this.parcels = parcels;
        this.ways = ways;
        this.addresses = addresses;
        this.boxes = boxes;
        this.customs = customs;
        this.faces = faces;
        this.patterns = patterns;
        this.difficulty = difficulty;
        this.workshop = workshop;
        this.figures = figures;
    }

    @Transactional(readOnly = true)
    public LabelSettings settings() {
        return store.read();
    }

    /** @throws Refused when words are too long, or the customs code is none */
    @Transactional
    public void save(LabelSettings settings) {
        if (settings.labelWords().length() > LabelSettings.LONGEST_WORDS
                || settings.careWords().length() > LabelSettings.LONGEST_WORDS
                || settings.contents().length() > LabelSettings.LONGEST_CONTENTS) {
            throw new Refused("delivery.label.words", LabelSettings.LONGEST_WORDS, LabelSettings.LONGEST_CONTENTS);
        }
        if (!settings.hsCode().matches("\\d{4}(\\.?\\d{2}){0,3}")) {
            throw new Refused("delivery.label.hs", settings.hsCode());
        }
        store.save(settings);
    }

    /**
     * The box labels of an order, one for each of its puzzles.
     *
     * @param first free place on the first sheet, from 0
     */
    @Transactional(readOnly = true)
    public byte[] labels(OrderId id, LabelKind kind, int first) {
        return pdf(
                "labels",
                (document, writer) -> LabelPages.lay(
                        document, writer, kind, () -> boxLabels(writer, kind, List.of(orders.get(id))), first));
    }

    /**
     * Packing slip, cards, address label, customs data where it goes abroad, and box labels of all that is in an order's
     * parcel.
     *
     * @param first free place on the first sheet of box labels, from 0
     * @param declared as what its goods are declared; as usual when nobody said
     */
    @Transactional(readOnly = true)
    public byte[] all(OrderId id, LabelKind kind, int first, Optional<GoodsCategory> declared) {
        Order asked = orders.get(id);
        Optional<Parcel> parcel = parcels.now(asked);
        List<Order> inside = parcel.map(one -> orders.all(one.orderIds())).orElse(List.of(asked));
        Optional<PostalAddress> to = addresses.of(asked);
        Boxes.Notes notes = boxes.notes(inside);
        List<PackedWeight> weights =
                inside.stream().map(order -> boxes.weight(order, notes)).toList();
        return pdf(asked.number(), (document, writer) -> {
            slip(document, writer, asked, parcel, inside, weights, to);
            LabelSettings settings = store.read();
            Size card = inches() ? CARD_IN_INCHES : CARD;
            for (Order order : inside) {
                LabelPages.page(document, card);
                writer.getDirectContent()
                        .addTemplate(
                                new PackingSlip(figures)
                                        .card(writer, card, face(order), title(order), settings.careWords(), maker()),
                                0,
                                0);
            }
            if (to.isPresent()) {
                Size label = LabelKind.ROLL_62_X_100.label();
                LabelPages.page(document, label);
                writer.getDirectContent()
                        .addTemplate(
                                new PackingSlip(figures)
                                        .address(
                                                writer,
                                                label,
                                                from(),
                                                to.get().lines(addresses.home()),
                                                asked.number()),
                                0,
                                0);
                customs.usual(asked, to)
                        .map(declared::orElse)
                        .ifPresent(category -> declaration(
                                document,
                                writer,
                                customs.form(inside, weights, grams(parcel, inside, weights), category)));
            }
            LabelPages.lay(document, writer, kind, () -> boxLabels(writer, kind, inside), first);
        });
    }

    private void slip(
            Document document,
            PdfWriter writer,
            Order asked,
            Optional<Parcel> parcel,
            List<Order> inside,
            List<PackedWeight> weights,
            Optional<PostalAddress> to) {
        List<PackingSlip.Line> lines = new ArrayList<>();
        for (int i = 0; i < inside.size(); i++) {
            Order order = inside.get(i);
            PackedWeight weight = weights.get(i);
            lines.add(new PackingSlip.Line(
                    order.number(), title(order), order.quantity(), weight.grams(), weight.scatterGrams()));
        }
        new PackingSlip(figures)
                .write(
                        document,
                        writer,
                        inches() ? LETTER : A4,
                        from(),
                        to.map(address -> address.lines(addresses.home()))
                                .orElseGet(() -> plain(
                                        asked.customer().name(),
                                        asked.customer().address())),
                        lines,
                        Optional.of(ways.orUsual(parcel.flatMap(Parcel::way).or(asked::deliveryWay))
                                .name()),
                        parcel.map(Parcel::tracking).orElse(""),
                        weighs(parcel, reckoned(inside, weights)));
    }

    /** What the scale says counts, once it was asked. */
    private String weighs(Optional<Parcel> parcel, double reckonedGrams) {
        return parcel.flatMap(Parcel::measure)
                .map(measure -> figures.text("delivery.slip.weighed", figures.number(measure.grams(), 0)))
                .orElseGet(() -> figures.text("delivery.slip.total", figures.number(reckonedGrams, 0)));
    }

    private void declaration(Document document, PdfWriter writer, CustomsForm form) {
        LabelPages.page(document, CustomsForm.SIZE);
        writer.getDirectContent().addTemplate(form.draw(writer, figures), 0, 0);
    }

    private static double grams(Optional<Parcel> parcel, List<Order> inside, List<PackedWeight> weights) {
        return parcel.flatMap(Parcel::measure).map(ParcelMeasure::grams).orElseGet(() -> reckoned(inside, weights));
    }

    private static double reckoned(List<Order> inside, List<PackedWeight> weights) {
        return IntStream.range(0, inside.size())
                .mapToDouble(i -> weights.get(i).grams() * inside.get(i).quantity())
                .sum();
    }

    private List<PdfTemplate> boxLabels(PdfWriter writer, LabelKind kind, List<Order> inside) {
        LabelSettings settings = store.read();
        List<PdfTemplate> labels = new ArrayList<>();
        for (Order order : inside) {
            SmallPartsVerdict verdict = SmallParts.judge(
                    patterns.of(order.puzzle().pattern()), order.puzzle().age());
            PdfTemplate label = new BoxLabel(
                            face(order),
                            figures.text("delivery.label.title"),
                            List.of(
                                    figures.size(order.puzzle().finished()),
                                    figures.text(
                                            "delivery.label.pieces",
                                            order.puzzle().pieces(),
                                            figures.text(difficulty.of(order).textKey())),
                                    figures.text(
                                            "orders.age." + order.puzzle().age().name())),
                            verdict.boxText().map(figures::say),
                            maker(),
                            order.number(),
                            settings.gtin(),
                            settings.labelWords())
                    .draw(writer, kind.label());
            for (int i = 0; i < order.quantity(); i++) {
                labels.add(label);
            }
        }
        return labels;
    }

    private byte[] face(Order order) {
        return faces.jpeg(order.puzzle(), order.picture(), FACE_PIXELS);
    }

    private String title(Order order) {
        return figures.text(
                order.puzzle().tray() ? "delivery.slip.puzzle-tray" : "delivery.slip.puzzle",
                order.puzzle().finished(),
                order.puzzle().pieces());
    }

    private List<String> from() {
        WorkshopProfile profile = workshop.profile();
        return plain(profile.name(), profile.address());
    }

    private String maker() {
        return from().stream().collect(Collectors.joining(", "));
    }

    private static List<String> plain(String name, String address) {
        List<String> lines = new ArrayList<>(List.of(name));
        address.lines().map(String::strip).filter(line -> !line.isEmpty()).forEach(lines::add);
        return lines;
    }

    private boolean inches() {
        return figures.units() == UnitSystem.INCHES;
    }

    private interface Pages {
        void write(Document document, PdfWriter writer);
    }

    private static byte[] pdf(String title, Pages pages) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Document document = new Document();
        PdfWriter writer = PdfWriter.getInstance(document, out);
        document.addTitle(title);
        document.addCreator("Puzzle Workshop");
        pages.write(document, writer);
        document.close();
        return out.toByteArray();
    }
}
