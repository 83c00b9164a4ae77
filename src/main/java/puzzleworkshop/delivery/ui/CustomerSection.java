package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.TextArea;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.ParcelJourney;
import puzzleworkshop.delivery.ParcelState;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.returns.Complaint;
import puzzleworkshop.delivery.returns.Complaints;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.orders.Order;
import puzzleworkshop.proofs.ui.ProofSection;

/** On the customer's page: where the parcel is; once it is there, thanks and the question whether all is well. */
@org.springframework.stereotype.Component
class CustomerSection implements ProofSection {

    private final Parcels parcels;

    private final ParcelJourney journey;
    private final SendingWays ways;
    private final Complaints complaints;
    private final Formatter figures;

    CustomerSection(
            Parcels parcels, ParcelJourney journey, SendingWays ways, Complaints complaints, Formatter figures) {
        this.parcels = parcels;
        this.journey = journey;
        this.ways = ways;
        this.complaints = complaints;
        this.figures = figures;
    }

    @Override
    public Optional<Component> show(Order order, Door door, Runnable changed) {
        Optional<Parcel> found = lastOut(order);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        Parcel parcel = found.get();
        SendingWay way = ways.orUsual(parcel.way());
        Div section = new Box(new H2(figures.text("delivery.customer.title")));
        section.add(new Verdict(
                parcel.state().hasArrived() ? Verdict.Kind.GOOD : Verdict.Kind.WAIT,
                figures.text(
                        "delivery.customer." + parcel.state().name(),
                        parcel.arrivedAt().or(parcel::leftAt).orElseThrow())));
        String together = parcel.orders().stream()
                .map(OrderRef::number)
                .filter(number -> !number.equals(order.number()))
                .collect(Collectors.joining(", "));
        if (!together.isEmpty()) {
            section.add(new Paragraph(figures.text("delivery.customer.together", together)));
        }
        if (parcel.state() == ParcelState.READY && !way.collectWindow().isBlank()) {
            section.add(new Paragraph(figures.text("delivery.customer.window", way.collectWindow())));
        }
        if (parcel.state() == ParcelState.SENT && !parcel.tracking().isBlank()) {
            section.add(way.link(parcel.tracking())
                    .<Component>map(link -> {
                        Anchor follow = new Anchor(link, figures.text("delivery.customer.follow", parcel.tracking()));
                        follow.setTarget("_blank");
                        follow.getElement().setAttribute("rel", "noopener noreferrer");
                        return follow;
                    })
                    .orElseGet(() -> new Paragraph(figures.text("delivery.slip.tracking", parcel.tracking()))));
        }
        if (parcel.state() == ParcelState.SENT) {
            section.add(new Button(
                    figures.text("delivery.customer.arrived"),
                    e -> asked(changed, () -> {
                        Order now = door.enter();
                        journey.delivered(
                                lastOut(now).orElseThrow().id(), now.customer().name());
                    })));
        }
        if (parcel.state().hasArrived()) {
            section.add(new Paragraph(figures.text("delivery.customer.thanks")));
            section.add(question(order, door, changed));
        }
        return Optional.of(section);
    }

    /** The last parcel that left or waits for the customer; of a puzzle made again it stays the first until the next leaves. */
    private Optional<Parcel> lastOut(Order order) {
        return parcels.everOf(order.id()).reversed().stream()
                .filter(parcel -> parcel.state() != ParcelState.PACKED)
                .findFirst();
    }

    private Component question(Order order, Door door, Runnable changed) {
        Div part = new Div();
        part.addClassName("pw-stack");
        List<Complaint> said = complaints.of(order.id());
        said.forEach(complaint -> {
            if (complaint.byCustomer()) {
                part.add(lines(figures.text("delivery.customer.said", complaint.at(), complaint.words())));
                part.add(photos(complaint, door, changed));
            }
            complaint
                    .decision()
                    .ifPresent(decision ->
                            part.add(lines((figures.text("delivery.customer.remedy."
                                                    + decision.remedy().name()) + "\n" + decision.answer())
                                    .strip())));
        });
        if (complaints.isWell(order.id()) && said.isEmpty()) {
            part.add(new Verdict(Verdict.Kind.GOOD, figures.text("delivery.customer.well")));
        }
        // A missing piece is often found only when the puzzle is put together, after all was well.
        TextArea words = new TextArea(figures.text("delivery.customer.wrong"));
        words.setMaxLength(2000);
        words.setWidthFull();
        Button tell = new Button(
                figures.text("delivery.customer.tell"),
                e -> asked(
                        changed,
                        () -> complaints.reportedByCustomer(door.enter().id(), words.getValue())));
        if (said.isEmpty() && !complaints.isWell(order.id())) {
            Button well = new Button(
                    figures.text("delivery.customer.all-well"),
                    e -> asked(changed, () -> complaints.allIsWell(door.enter().id())));
            well.addThemeVariants(ButtonVariant.PRIMARY);
            part.add(new Paragraph(figures.text("delivery.customer.question")), well);
        }
        part.add(words, tell);
        return part;
    }

    /** How many there are, and while nobody has decided one more can be sent. */
    private Component photos(Complaint complaint, Door door, Runnable changed) {
        Div part = new Div();
        int sent = complaints.photos(complaint.id()).size();
        if (sent > 0) {
            part.add(new Paragraph(figures.text("delivery.customer.photos", sent)));
        }
        if (complaint.decision().isEmpty() && sent < Complaints.MOST_PHOTOS_BY_CUSTOMER) {
            part.add(new FileUpload(figures, Photos.MOST_BYTES, Feedback::refusal, file -> {
                        complaints.photoByCustomer(door.enter().id(), complaint.id(), file.content());
                        return () -> {
                            Feedback.tell(figures.text("delivery.customer.kept"), false);
                            changed.run();
                        };
                    })
                    .labelled(figures.text("delivery.customer.photo"), figures.text("delivery.customer.photo.drop")));
        }
        return part;
    }

    private void asked(Runnable changed, Runnable what) {
        if (Feedback.unlessRefused(figures, "delivery.customer.kept", what)) {
            changed.run();
        }
    }

    private static Paragraph lines(String text) {
        Paragraph lines = new Paragraph(text);
        lines.addClassName("delivery-lines");
        return lines;
    }

    /** Brings its own look along. */
    @StyleSheet("context://delivery.css")
    private static final class Box extends Div {
        Box(Component... parts) {
            super(parts);
            addClassNames("pw-section", "delivery-customer");
        }
    }
}
