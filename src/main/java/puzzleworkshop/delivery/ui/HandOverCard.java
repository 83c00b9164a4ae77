package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.value.ValueChangeMode;
import com.vaadin.flow.server.VaadinRequest;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import puzzleworkshop.delivery.HandOvers.Entry;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.ParcelId;
import puzzleworkshop.delivery.ParcelJourney;
import puzzleworkshop.delivery.ParcelState;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.display.BookButton;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderPreview;
import puzzleworkshop.workshop.SignedIn;

/** One parcel on the page of the day: who, what, which way, what is still to be paid, and the one thing to press. */
class HandOverCard extends Div {

    private final transient Entry entry;
    private final transient Parcels parcels;
    private final transient ParcelJourney journey;
    private final transient SignedIn signedIn;
    private final transient Formatter figures;
    private final transient Map<Long, String> typed;
    private final transient Runnable again;

    HandOverCard(
            Entry entry,
            Parcels parcels,
            ParcelJourney journey,
            SignedIn signedIn,
            Formatter figures,
            Map<Long, String> typed,
            Runnable again) {
        this.entry = entry;
        this.parcels = parcels;
        this.journey = journey;
        this.signedIn = signedIn;
        this.figures = figures;
        this.typed = typed;
        this.again = again;
        addClassName("delivery-card");
        add(new OrderPreview(entry.first(), OrderPreview.Width.SMALL), words(), actions());
    }

    boolean holds(OrderId order) {
        return entry.ids().contains(order);
    }

    void mark() {
        addClassName("delivery-card-found");
    }

    private Div words() {
        Div words = new Div(new H3(entry.first().customer().name()));
        words.addClassName("delivery-words");
        Div numbers = new Div();
        numbers.addClassName("delivery-numbers");
        for (Order order : entry.orders()) {
            numbers.add(new Anchor("orders/" + order.number(), order.number()));
        }
        words.add(numbers);
        String way = entry.way().name();
        words.add(small(
                entry.isCollected() && !entry.way().collectWindow().isBlank()
                        ? way + " · " + entry.way().collectWindow()
                        : way));
        if (!entry.isCollected()) {
            words.add(entry.to()
                    .map(address -> small(String.join(", ", address.lines(address.country()))))
                    .orElseGet(() ->
                            new Span(new Verdict(Verdict.Kind.WARN, getTranslation("delivery.address.unchecked")))));
        }
        entry.parcel()
                .flatMap(Parcel::leftAt)
                .ifPresent(at -> words.add(
                        small(figures.text(entry.isCollected() ? "delivery.ready-since" : "delivery.sent-at", at))));
        if (entry.isCollected()) {
            entry.parcel()
                    .flatMap(Parcel::remindedAt)
                    .ifPresent(at -> words.add(small(figures.text("delivery.reminded-at", at))));
        }
        entry.first().promised().ifPresent(day -> words.add(small(figures.text("delivery.promised", day))));
        words.add(
                entry.open().isPresent()
                        ? new Verdict(
                                Verdict.Kind.WARN,
                                figures.text("delivery.to-pay", entry.open().get()))
                        : new Verdict(Verdict.Kind.GOOD, getTranslation("delivery.paid")));
        return words;
    }

    private Div actions() {
        Div actions = new Div();
        actions.addClassName("delivery-actions");
        if (entry.state().isHere() && !entry.together().isEmpty()) {
            BookButton together = new BookButton(
                    getTranslation(
                            "delivery.together",
                            entry.together().stream().map(Order::number).collect(Collectors.joining(", "))),
                    () -> act("delivery.together.done", id -> {
                        parcels.pack(
                                java.util.stream.Stream.concat(entry.orders().stream(), entry.together().stream())
                                        .map(Order::id)
                                        .toList(),
                                signedIn.name());
                        return true;
                    }));
            together.addClassName("delivery-big");
            actions.add(together);
        }
        if (!entry.isCollected()) {
            actions.add(tracking());
        }
        if (entry.state() == ParcelState.SENT) {
            big(
                    actions,
                    "delivery.mark-delivered",
                    false,
                    () -> act("delivery.done.DELIVERED", id -> {
                        journey.delivered(id, signedIn.name());
                        return true;
                    }));
        } else if (!entry.isCollected()) {
            big(
                    actions,
                    "delivery.mark-sent",
                    true,
                    () -> act("delivery.done.SENT", id -> {
                        keepTracking(id);
                        journey.send(key("send"), id, signedIn.name(), device());
                        return true;
                    }));
        } else {
            if (entry.state() == ParcelState.PACKED) {
                big(
                        actions,
                        "delivery.mark-ready",
                        true,
                        () -> act("delivery.done.READY", id -> {
                            journey.ready(id, signedIn.name());
                            return true;
                        }));
            } else {
                big(
                        actions,
                        "delivery.remind",
                        false,
                        () -> act("delivery.done.remind", id -> {
                            journey.remind(id, signedIn.name());
                            return true;
                        }));
            }
            big(
                    actions,
                    "delivery.mark-collected",
                    entry.state() == ParcelState.READY,
                    () -> act("delivery.done.COLLECTED", id -> {
                        journey.collected(key("collected"), id, signedIn.name(), device());
                        return true;
                    }));
        }
        return actions;
    }

    private TextField tracking() {
        TextField number = new TextField(getTranslation("delivery.tracking"));
        long id = entry.first().id().value();
        number.setValue(
                typed.getOrDefault(id, entry.parcel().map(Parcel::tracking).orElse("")));
        if (entry.state() == ParcelState.SENT) {
            // Forgotten when it was sent: kept as soon as the field is left.
            number.addValueChangeListener(e -> {
                typed.put(id, e.getValue());
                if (e.isFromClient()) {
                    act("delivery.tracking.kept", parcel -> {
                        keepTracking(parcel);
                        return true;
                    });
                }
            });
        } else {
            number.setValueChangeMode(ValueChangeMode.LAZY);
            number.addValueChangeListener(e -> typed.put(id, e.getValue()));
        }
        number.setReadOnly(entry.state() == ParcelState.SENT
                && !entry.parcel().map(Parcel::tracking).orElse("").isEmpty());
        entry.parcel().flatMap(parcel -> entry.way().link(parcel.tracking())).ifPresent(link -> {
            Anchor follow = new Anchor(link, getTranslation("delivery.follow"));
            follow.setTarget("_blank");
            follow.getElement().setAttribute("rel", "noopener noreferrer");
            number.setSuffixComponent(follow);
        });
        return number;
    }

    private void keepTracking(ParcelId id) {
        Optional.ofNullable(typed.get(entry.first().id().value()))
                .filter(number -> !number.isBlank())
                .ifPresent(number -> parcels.tracked(id, number, signedIn.name()));
    }

    private void big(Div actions, String key, boolean primary, java.util.function.BooleanSupplier press) {
        BookButton button = new BookButton(getTranslation(key), press);
        button.setAriaLabel(getTranslation(key) + ", "
                + entry.first().customer().name() + ", " + entry.first().number());
        button.addClassName("delivery-big");
        if (primary) {
            button.addThemeVariants(ButtonVariant.PRIMARY);
        }
        actions.add(button);
    }

    /** Puts the order into a parcel first where it lies in none. */
    private boolean act(String done, Function<ParcelId, Boolean> what) {
        boolean acted = Feedback.unlessRefused(figures, done, () -> {
            ParcelId id = entry.parcel()
                    .map(Parcel::id)
                    .orElseGet(() -> parcels.pack(entry.ids(), signedIn.name()).id());
            what.apply(id);
            typed.remove(entry.first().id().value());
        });
        if (acted) {
            again.run();
        }
        return acted;
    }

    private BookingKey key(String what) {
        return BookingKey.seen(what, entry.first().number(), entry.seen());
    }

    private static String device() {
        return Optional.ofNullable(VaadinRequest.getCurrent())
                .map(request -> request.getHeader("User-Agent"))
                .orElse("");
    }

    private static Span small(String text) {
        Span small = new Span(text);
        small.addClassName("pw-small");
        return small;
    }
}
