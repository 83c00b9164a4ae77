package puzzleworkshop.wood.ui;

import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.TextField;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.wood.BoardsOnTheWay;
import puzzleworkshop.wood.OnTheWay;
import puzzleworkshop.workshop.SignedIn;

/** Boards that were ordered: when they come they are entered in the rack by one press. Nothing is shown while none is. */
class OnTheWayList extends Div {

    private final transient BoardsOnTheWay boards;
    private final transient SignedIn who;
    private final transient Formatter figures;
    private final transient Runnable booked;

    OnTheWayList(BoardsOnTheWay boards, SignedIn who, Formatter figures, Runnable booked) {
        this.boards = boards;
        this.who = who;
        this.figures = figures;
        this.booked = booked;
        addClassName("pw-section");
        refresh();
    }

    void refresh() {
        removeAll();
        var ordered = boards.all();
        setVisible(!ordered.isEmpty());
        add(new H2(getTranslation("wood.ordered")), new Paragraph(getTranslation("wood.ordered.text")));
        ordered.forEach(order -> add(row(order)));
    }

    private Div row(OnTheWay order) {
        Span what = new Span(figures.text("wood.ordered.row", order.count(), name(order), figures.day(order.due())));
        TextField place = new TextField(getTranslation("wood.ordered.place"));
        BookingKey key = BookingKey.fresh();
        BookButton arrived = new BookButton(
                getTranslation("wood.ordered.arrived"),
                () -> book(
                        "wood.ordered.arrived.done",
                        () -> boards.arrived(key, order.id(), place.getValue().strip(), who.name())));
        arrived.addThemeVariants(ButtonVariant.SMALL, ButtonVariant.PRIMARY);
        BookingKey other = BookingKey.fresh();
        BookButton not = new BookButton(
                getTranslation("wood.ordered.not"),
                () -> book("wood.ordered.not.done", () -> boards.notComing(other, order.id())));
        not.addThemeVariants(ButtonVariant.SMALL, ButtonVariant.TERTIARY);
        Div fields = new Div(place, arrived, not);
        fields.addClassName("wood-fields");
        Div row = new Div(what, fields);
        row.addClassName("wood-kind");
        return row;
    }

    private boolean book(String done, Runnable book) {
        boolean went = Feedback.unlessRefused(figures, done, book);
        if (went) {
            refresh();
            booked.run();
        }
        return went;
    }

    private String name(OnTheWay order) {
        return order.cutTo()
                .map(size -> figures.text("wood.buy.cut", size, order.board().name()))
                .orElse(order.board().name());
    }
}
