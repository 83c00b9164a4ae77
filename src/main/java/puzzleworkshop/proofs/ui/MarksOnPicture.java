package puzzleworkshop.proofs.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Image;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.pixels.MarkedSpot;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.PieceLayout;
import puzzleworkshop.proofs.MarkedPlace;

/**
 * Places that the customer taps on the picture: shown there as ovals, and listed with what lines are to do about them. They
 * stay on what they were put on when the picture is framed otherwise, and go when there is another picture.
 */
class MarksOnPicture extends Div {

    private static final String ACROSS = "event.offsetX / element.clientWidth";
    private static final String DOWN = "event.offsetY / element.clientHeight";
    private static final double USUAL = 0.06;
    private static final double STEP = 1.25;
    private static final double LARGEST = 0.4;
    private static final double SMALLEST = 0.02;

    private final ProofView view;
    private final List<Mark> marks = new ArrayList<>();
    private final Div ovals = new Div();
    private final SmallText said = new SmallText();
    private transient Optional<PictureId> picture = Optional.empty();
    private boolean on;

    MarksOnPicture(ProofView view) {
        this.view = view;
        addClassName("pw-stack");
        said.getElement().setAttribute("role", "status");
        ovals.addClassName("proofs-ovals");
    }

    /** Shows the marks on a face, and takes taps on it after the button that comes back was pressed. */
    Div on(Div face, Image image) {
        Optional<PictureId> now = view.sight().picture().map(Picture::id);
        if (!now.equals(picture)) {
            picture = now;
            marks.clear();
        }
        face.add(ovals);
        image.getElement()
                .addEventListener("click", event -> {
                    if (on) {
                        tapped(
                                Math.clamp(event.getEventData().path(ACROSS).asDouble(), 0, 1),
                                Math.clamp(event.getEventData().path(DOWN).asDouble(), 0, 1));
                    }
                })
                .addEventData(ACROSS)
                .addEventData(DOWN);
        show();
        Button start = view.button("proofs.mark", false, () -> {
            on = true;
            said.setText(getTranslation("proofs.mark.how"));
        });
        start.setId("mark-places");
        Div both = new Div(start, said);
        both.addClassName("proofs-marking");
        return both;
    }

    List<MarkedPlace> places() {
        return marks.stream().map(Mark::place).toList();
    }

    /** After they were sent. */
    void clear() {
        marks.clear();
        on = false;
        said.setText("");
        show();
    }

    private Crop crop() {
        return view.sight().order().picture().map(FramedPicture::crop).orElseThrow();
    }

    private void tapped(double across, double down) {
        if (marks.size() >= PieceLayout.MOST_KEPT_WHOLE) {
            said.setText(view.figures().text("proofs.mark.most", PieceLayout.MOST_KEPT_WHOLE));
            return;
        }
        MarkedSpot spot = MarkedSpot.of(
                new MarkedSpot.InFrame(across, down, USUAL),
                crop(),
                view.sight().picture().orElseThrow());
        marks.add(new Mark(spot));
        said.setText(getTranslation("proofs.mark.said", marks.size()));
        show();
    }

    private void show() {
        removeAll();
        ovals.removeAll();
        for (int i = 0; i < marks.size(); i++) {
            ovals.add(oval(marks.get(i), i + 1));
            add(row(marks.get(i), i + 1));
        }
    }

    private Div oval(Mark mark, int number) {
        MarkedSpot.InFrame seen = mark.spot.in(crop(), view.sight().picture().orElseThrow());
        double aspect = view.sight().order().puzzle().finished().aspect();
        double halfHeight = KeptWhole.HIGHER * seen.halfWidth() * aspect;
        Div oval = new Div(new Span(String.valueOf(number)));
        oval.addClassName("proofs-oval");
        oval.getElement().setAttribute("data-along", mark.along.getValue() == How.ALONG);
        oval.getStyle()
                .set("left", percent(seen.across() - seen.halfWidth()))
                .set("top", percent(seen.down() - halfHeight))
                .set("width", percent(2 * seen.halfWidth()))
                .set("height", percent(2 * halfHeight));
        return oval;
    }

    private static String percent(double share) {
        return Math.round(10_000 * share) / 100.0 + "%";
    }

    private Div row(Mark mark, int number) {
        mark.along.setLabel(getTranslation("proofs.mark.place", number));
        Div row = new Div(
                mark.along,
                tool("−", "proofs.mark.smaller", number, () -> mark.sized(1 / STEP)),
                tool("+", "proofs.mark.larger", number, () -> mark.sized(STEP)),
                tool("×", "proofs.mark.remove", number, () -> marks.remove(mark)));
        row.addClassName("proofs-mark-row");
        return row;
    }

    private Button tool(String sign, String key, int number, Runnable does) {
        Button button = new Button(sign, click -> {
            does.run();
            show();
        });
        button.setAriaLabel(getTranslation(key, number));
        button.addThemeVariants(ButtonVariant.TERTIARY);
        return button;
    }

    private enum How {
        AROUND,
        ALONG
    }

    private final class Mark {
        private final Select<How> along = new Select<>();
        private transient MarkedSpot spot;

        Mark(MarkedSpot spot) {
            this.spot = spot;
            along.setItems(How.values());
            along.setItemLabelGenerator(how -> getTranslation("proofs.mark." + how.name()));
            along.setValue(How.AROUND);
            along.addValueChangeListener(event -> show());
        }

        void sized(double factor) {
            double half = Math.clamp(factor * spot.halfWidth(), SMALLEST, LARGEST);
            spot = new MarkedSpot(spot.across(), spot.down(), half);
        }

        MarkedPlace place() {
            return new MarkedPlace(spot, along.getValue() == How.ALONG);
        }
    }
}
