package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.delivery.HandOvers;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.WayAdvice;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.delivery.address.PostalAddress;
import puzzleworkshop.delivery.boxes.Boxes;
import puzzleworkshop.delivery.sending.Kilograms;
import puzzleworkshop.delivery.sending.ParcelMeasure;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.delivery.sending.WayKind;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.ui.OrderPanel;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** The parcel on the page of an order: where it is, where it goes, what it is packed in, which way, and its papers. */
@org.springframework.stereotype.Component
class ParcelPanel implements OrderPanel {

    private final HandOvers handOvers;
    private final Parcels parcels;
    private final HandOverParts parts;
    private final SendingWays ways;
    private final WayAdvice advice;
    private final Addresses addresses;
    private final PackingNotes packing;
    private final Boxes boxes;
    private final Workshop workshop;
    private final SignedIn signedIn;
    private final Formatter figures;

    ParcelPanel(
            HandOvers handOvers,
            Parcels parcels,
            HandOverParts parts,
            SendingWays ways,
            WayAdvice advice,
            Addresses addresses,
            PackingNotes packing,
            Boxes boxes,
            Workshop workshop,
            SignedIn signedIn,
            Formatter figures) {
        this.boxes = boxes;
        this.workshop = workshop;
        this.handOvers = handOvers;
        this.parcels = parcels;
        this.parts = parts;
        this.ways = ways;
        this.advice = advice;
        this.addresses = addresses;
        this.packing = packing;
        this.signedIn = signedIn;
        this.figures = figures;
    }

    @Override
    public int place() {
        return 45;
    }

    @Override
    public Optional<Component> show(Order order, Runnable changed) {
        if (order.state() == OrderState.QUOTE || order.state() == OrderState.CANCELLED) {
            return Optional.empty();
        }
        Div panel = new Box();
        panel.add(new H2(figures.text("delivery.parcel")));
        Optional<Parcel> parcel = parcels.now(order);
        parcel.ifPresent(one -> panel.add(new Verdict(
                one.state().hasArrived() ? Verdict.Kind.GOOD : Verdict.Kind.WAIT,
                figures.text(one.state().textKey()))));
        SendingWay way = ways.orUsual(parcel.flatMap(Parcel::way).or(order::deliveryWay));
        Optional<PostalAddress> to = addresses.of(order);
        List<Order> inside = handOvers.inside(order, parcel);
        Boxes.Notes notes = boxes.notes(inside);
        boolean here = parcel.map(one -> one.state().isHere()).orElse(true);
        boolean packed = order.next().equals(Optional.of(Stage.HAND_OVER));
        // an address that nobody has looked through is asked for where the parcel is sent
        boolean askedByCard = here && packed && to.isEmpty();
        if ((way.kind() != WayKind.COLLECTION || to.isPresent()) && !askedByCard) {
            panel.add(address(order, to, changed));
        }
        if (here) {
            panel.add(packing.show(order, notes, changed));
            if (packed) {
                panel.add(wayOf(new Known(order, parcel, inside, notes, way, to), changed));
            }
        }
        if (packed || parcel.map(one -> !one.state().hasArrived()).orElse(false)) {
            handOvers
                    .of(inside, parcel, to)
                    .ifPresent(entry -> panel.add(HandOverCard.onOrderPage(entry, parts, changed)));
        }
        panel.add(packing.papers(order, to));
        return Optional.of(panel);
    }

    /** What the parts of the panel have in common, read once. */
    private record Known(
            Order order,
            Optional<Parcel> parcel,
            List<Order> inside,
            Boxes.Notes notes,
            SendingWay way,
            Optional<PostalAddress> to) {}

    private Component address(Order order, Optional<PostalAddress> kept, Runnable changed) {
        Paragraph lines = new Paragraph(kept.map(address -> String.join("\n", address.lines(addresses.home())))
                .orElseGet(() -> unchecked(order)));
        lines.addClassName("delivery-lines");
        Button edit = new Button(
                figures.text(kept.isPresent() ? "delivery.address.change" : "delivery.address.check"),
                e -> new AddressDialog(order, addresses, figures, signedIn.name(), changed).open());
        edit.addThemeVariants(ButtonVariant.TERTIARY);
        Div row = new Div(lines, edit);
        row.addClassName("pw-row");
        return row;
    }

    /** What was typed with the order stands there until somebody has looked it through. */
    private String unchecked(Order order) {
        String typed = WhereTo.typed(order.customer().address());
        String word = figures.text("delivery.address.unchecked");
        return typed.isEmpty() ? word : word + "\n" + typed;
    }

    private Component wayOf(Known known, Runnable changed) {
        List<SendingWay> all = ways.all();
        SendingWay now = known.way();
        Select<SendingWay> way = new Select<>();
        way.setLabel(figures.text("delivery.way"));
        way.setItems(all);
        way.setItemLabelGenerator(SendingWay::name);
        way.setValue(all.stream()
                .filter(one -> one.way().id() == now.way().id())
                .findFirst()
                .orElseThrow());
        way.addValueChangeListener(e -> {
            Feedback.unlessRefused(
                    figures, "workshop.saved", () -> choose(known.order(), known.parcel(), e.getValue()));
            changed.run();
        });
        Optional<ParcelMeasure> measured = known.parcel().flatMap(Parcel::measure);
        Optional<ParcelMeasure> measure = measured.or(() -> reckoned(known));
        Div part = new Div(way, measure(known, measure, changed));
        part.addClassName("pw-stack");
        if (now.kind() == WayKind.PARCEL) {
            part.add(new WayAnswer(() -> advice.of(known.inside(), measure, known.to()), now, figures, best -> {
                        Feedback.unlessRefused(
                                figures, "workshop.saved", () -> choose(known.order(), known.parcel(), best));
                        changed.run();
                    })
                    .say());
        }
        return part;
    }

    private Component measure(Known known, Optional<ParcelMeasure> measure, Runnable changed) {
        Optional<Parcel> parcel = known.parcel();
        boolean measured = parcel.flatMap(Parcel::measure).isPresent();
        Div row = new Div();
        row.addClassName("pw-row");
        measure.ifPresent(one -> row.add(small(figures.text(
                measured ? "delivery.measure.measured" : "delivery.measure.reckoned",
                Kilograms.of(one.grams()),
                figures.sides(one.longest(), one.middle(), one.shortest()),
                one.lengthAndGirth()))));
        parcel.flatMap(Parcel::postage)
                .filter(money -> signedIn.isOwner())
                .ifPresent(money -> row.add(small(figures.text("delivery.measure.costs", money))));
        Button press = new Button(figures.text("delivery.measure"), e -> {
            Parcel into =
                    parcel.orElseGet(() -> parcels.pack(List.of(known.order().id()), signedIn.name()));
            new MeasureDialog(into, measure, known.way(), parcels, workshop, signedIn.isOwner(), figures, changed)
                    .open();
        });
        press.addThemeVariants(ButtonVariant.TERTIARY);
        row.add(press);
        return row;
    }

    private Optional<ParcelMeasure> reckoned(Known known) {
        try {
            return boxes.reckoned(known.inside(), known.notes());
        } catch (Refused unknown) {
            return Optional.empty();
        }
    }

    private void choose(Order order, Optional<Parcel> parcel, SendingWay way) {
        Parcel into = parcel.filter(one -> one.state().isHere())
                .orElseGet(() -> parcels.pack(List.of(order.id()), signedIn.name()));
        parcels.by(into.id(), way, signedIn.name());
    }

    private static Paragraph small(String text) {
        SmallText small = new SmallText(text);
        return small;
    }

    /** Brings its own look along, wherever it is shown. */
    @StyleSheet("context://delivery.css")
    private static final class Box extends Div {
        Box() {
            addClassNames("pw-section", "delivery-panel");
        }
    }

    static Anchor pdf(String href, String words) {
        Anchor pdf = new Anchor(href, words);
        pdf.setTarget("_blank");
        pdf.setRouterIgnore(true);
        pdf.addClassName("pw-link-button");
        return pdf;
    }
}
