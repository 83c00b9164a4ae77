package puzzleworkshop.delivery.ui.returns;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Image;
import com.vaadin.flow.component.html.Paragraph;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.delivery.returns.Complaint;
import puzzleworkshop.delivery.returns.Complaints;
import puzzleworkshop.delivery.returns.Remedies;
import puzzleworkshop.delivery.ui.ParcelLetters;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.offers.PieceOrders;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderPanel;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/** On the order's page: what the customer found wrong or sent back, and what is done about it. */
@org.springframework.stereotype.Component
class ComplaintPanel implements OrderPanel {

    private final Complaints complaints;
    private final Remedies remedies;
    private final Invoices invoices;
    private final PieceOrders pieces;
    private final ParcelLetters letters;
    private final Workshop workshop;
    private final SignedIn signedIn;
    private final Formatter figures;

    ComplaintPanel(
            Complaints complaints,
            Remedies remedies,
            Invoices invoices,
            PieceOrders pieces,
            ParcelLetters letters,
            Workshop workshop,
            SignedIn signedIn,
            Formatter figures) {
        this.complaints = complaints;
        this.remedies = remedies;
        this.invoices = invoices;
        this.pieces = pieces;
        this.letters = letters;
        this.workshop = workshop;
        this.signedIn = signedIn;
        this.figures = figures;
    }

    @Override
    public int place() {
        return 47;
    }

    @Override
    public Optional<Component> show(Order order, Runnable changed) {
        var said = complaints.of(order.id());
        if (said.isEmpty() && !Complaints.mayComplain(order)) {
            return Optional.empty();
        }
        Div panel = new Box(new H2(figures.text("delivery.complaints")));
        if (said.isEmpty()) {
            panel.add(
                    complaints.isWell(order.id())
                            ? new Verdict(Verdict.Kind.GOOD, figures.text("delivery.well"))
                            : small(figures.text("delivery.complaints.none")));
        }
        said.forEach(complaint -> panel.add(one(order, complaint, changed)));
        if (Complaints.mayComplain(order)) {
            panel.add(new Button(
                    figures.text("delivery.complaint.new"),
                    e -> new ReportDialog(order, complaints, figures, signedIn.name(), changed).open()));
        }
        return Optional.of(panel);
    }

    private Component one(Order order, Complaint complaint, Runnable changed) {
        Div all = new Div();
        all.addClassNames("pw-stack", "delivery-way");
        all.add(new Paragraph(figures.text(
                "delivery.complaint.line",
                figures.text(complaint.reason().textKey()),
                complaint.who(),
                complaint.at())));
        if (!complaint.words().isBlank()) {
            Paragraph words = new Paragraph(complaint.words());
            words.addClassName("delivery-lines");
            all.add(words);
        }
        all.add(photos(complaint));
        complaint
                .decision()
                .ifPresentOrElse(
                        decision -> {
                            all.add(new Verdict(
                                    Verdict.Kind.GOOD,
                                    figures.text(
                                            "delivery.complaint.done",
                                            figures.text(decision.remedy().textKey()),
                                            figures.text(decision.postageBy().textKey()),
                                            decision.who(),
                                            decision.at())));
                            decision.postage()
                                    .filter(money -> signedIn.isOwner())
                                    .ifPresent(money ->
                                            all.add(small(figures.text("delivery.complaint.postage-was", money))));
                            if (decision.remedy() == Complaint.Remedy.PIECE_AGAIN) {
                                all.add(pieces(order));
                            }
                            if (!decision.answer().isBlank()) {
                                all.add(small(decision.answer()));
                            }
                            Button answer = new Button(
                                    figures.text("delivery.complaint.write"),
                                    e -> letters.write(order, ParcelLetters.Occasion.ANSWER, changed));
                            answer.addThemeVariants(ButtonVariant.TERTIARY);
                            all.add(answer);
                        },
                        () -> {
                            Button decide = new Button(
                                    figures.text("delivery.complaint.decide"),
                                    e -> new DecideDialog(
                                                    order,
                                                    complaint,
                                                    complaints,
                                                    remedies,
                                                    invoices,
                                                    workshop,
                                                    figures,
                                                    signedIn.name(),
                                                    changed)
                                            .open());
                            decide.addThemeVariants(ButtonVariant.PRIMARY);
                            all.add(decide, camera(complaint, changed));
                        });
        return all;
    }

    /** Orders of single pieces that were made for it; each has its own figures. While there is none, the way to one. */
    private Component pieces(Order order) {
        Div all = new Div();
        all.addClassName("pw-stack");
        List<PieceOrders.PieceOrder> made = pieces.of(order.id());
        made.forEach(piece -> all.add(new Anchor(
                "orders/" + piece.number(), figures.text("delivery.complaint.piece", piece.piece(), piece.number()))));
        if (made.isEmpty()) {
            all.add(new Button(
                    figures.text("delivery.complaint.make-piece"),
                    e -> all.getElement().executeJs("""
                        const part = document.getElementById($0);
                        if (part) {
                          part.dispatchEvent(new Event($1));
                          part.opened = true;
                          part.scrollIntoView({block: 'start'});
                        }
                        """, PieceOrders.PLACE, PieceOrders.FOR_NOTHING)));
        }
        return all;
    }

    private Component photos(Complaint complaint) {
        Div photos = new Div();
        photos.addClassName("delivery-photos");
        complaints.photos(complaint.id()).forEach(id -> {
            Anchor full = new Anchor(
                    "complaint-photos/" + id,
                    new Image("complaint-photos/" + id, figures.text("delivery.complaint.photo-of", complaint.at())));
            full.setTarget("_blank");
            full.setRouterIgnore(true);
            photos.add(full);
        });
        return photos;
    }

    private Component camera(Complaint complaint, Runnable changed) {
        String who = signedIn.name();
        FileUpload upload = new FileUpload(figures, Photos.MOST_BYTES, Feedback::refusal, file -> {
            byte[] content = file.content();
            return () -> {
                Feedback.unlessRefused(
                        figures, "delivery.complaint.photo-kept", () -> complaints.photo(complaint.id(), content, who));
                changed.run();
            };
        });
        upload.camera(new Button(figures.text("delivery.complaint.photo")));
        upload.setAcceptedMimeTypes("image/jpeg", "image/png", "image/webp");
        upload.addClassName("bench-photo");
        return upload;
    }

    private static Paragraph small(String text) {
        SmallText small = new SmallText(text);
        return small;
    }

    /** Brings its own look along, wherever it is shown. */
    @StyleSheet("context://delivery.css")
    @StyleSheet("context://bench.css")
    private static final class Box extends Div {
        Box(Component... parts) {
            super(parts);
            addClassNames("pw-section", "delivery-complaints");
        }
    }
}
