package puzzleworkshop.delivery.ui.setup;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import java.util.List;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.delivery.boxes.Boxes;
import puzzleworkshop.delivery.labels.ParcelPapers;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;
import puzzleworkshop.workshop.ui.SetUpPart;
import puzzleworkshop.workshop.ui.SetUpSection;

/** The part of Set-up about parcels: prices and limits of the ways of sending, boxes, the owner's words on labels. */
@org.springframework.stereotype.Component
class DeliverySetUp implements SetUpSection {

    private final SendingWays ways;
    private final Boxes boxes;
    private final ParcelPapers papers;
    private final Addresses addresses;
    private final Orders orders;
    private final Workshop workshop;
    private final SignedIn signedIn;
    private final Formatter figures;

    DeliverySetUp(
            SendingWays ways,
            Boxes boxes,
            ParcelPapers papers,
            Addresses addresses,
            Orders orders,
            Workshop workshop,
            SignedIn signedIn,
            Formatter figures) {
        this.ways = ways;
        this.boxes = boxes;
        this.papers = papers;
        this.addresses = addresses;
        this.orders = orders;
        this.workshop = workshop;
        this.signedIn = signedIn;
        this.figures = figures;
    }

    @Override
    public int place() {
        return 25;
    }

    @Override
    public List<SetUpPart> parts() {
        return List.of(
                new SetUpPart("delivery.sending", () -> new Styled(new SendingForm(ways, workshop, figures))),
                new SetUpPart("delivery.boxes", () -> new Styled(new BoxesForm(boxes, orders, signedIn, figures))),
                new SetUpPart("delivery.labels", () -> new Styled(new LabelsForm(papers, addresses, figures))));
    }

    /** Brings its own look along. */
    @StyleSheet("context://delivery.css")
    private static final class Styled extends Div {
        Styled(Component part) {
            super(part);
            addClassName("delivery-setup");
        }
    }
}
