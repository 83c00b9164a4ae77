package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.value.ValueChangeMode;
import com.vaadin.flow.server.VaadinRequest;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import puzzleworkshop.delivery.HandOvers.Entry;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.ParcelId;
import puzzleworkshop.delivery.ParcelJourney;
import puzzleworkshop.delivery.ParcelState;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.WayAdvice;
import puzzleworkshop.delivery.ui.ParcelLetters.Occasion;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.workshop.SignedIn;

/** What can be done with a parcel on the page of the day; what the customer should know then is written at once. */
class HandOverActions extends Div {

    private final transient Entry entry;
    private final transient Parcels parcels;
    private final transient ParcelJourney journey;
    private final transient WayAdvice advice;
    private final transient ParcelLetters letters;
    private final transient SignedIn signedIn;
    private final transient Formatter figures;
    private final transient Map<Long, String> typed;
    private final boolean asksBestWay;
    private final transient Runnable again;

    /**
     * @param asksBestWay offers to say which way is best; not where the page says so already
     * @param again shows the page as it is now
     */
    HandOverActions(Entry entry, HandOverParts parts, boolean asksBestWay, Runnable again) {
        this.asksBestWay = asksBestWay;
        this.entry = entry;
        this.parcels = parts.parcels();
        this.journey = parts.journey();
        this.advice = parts.advice();
        this.letters = parts.letters();
        this.signedIn = parts.signedIn();
        this.figures = parts.figures();
        this.typed = TypedNumbers.here().byOrder();
        this.again = again;
        addClassName("delivery-actions");
        if (entry.state().isHere()) {
            together();
        }
        if (entry.isCollected()) {
            toCollect();
        } else {
            if (entry.to().isEmpty() && entry.state().isHere()) {
                add(address(parts));
            }
            add(tracking());
            toSend();
        }
    }

    private void together() {
        if (!entry.together().isEmpty()) {
            BookButton together = new BookButton(
                    getTranslation(
                            "delivery.together",
                            entry.together().stream().map(Order::number).collect(Collectors.joining(", "))),
                    () -> act(
                            "delivery.together.done",
                            id -> parcels.pack(
                                    Stream.concat(entry.orders().stream(), entry.together().stream())
                                            .map(Order::id)
                                            .toList(),
                                    signedIn.name())));
            together.addClassName("delivery-big");
            add(together);
        }
        if (entry.orders().size() > 1) {
            add(takingOut());
        }
    }

    private void toSend() {
        if (entry.state() == ParcelState.SENT) {
            add(tell(Occasion.SENT));
            big(
                    "delivery.mark-delivered",
                    false,
                    () -> act(
                            "delivery.done.DELIVERED",
                            Optional.of(Occasion.ARRIVED),
                            id -> journey.delivered(id, signedIn.name())));
        } else {
            if (asksBestWay) {
                add(bestWay());
            }
            big(
                    "delivery.mark-sent",
                    true,
                    () -> act(
                            "delivery.done.SENT",
                            Optional.of(Occasion.SENT),
                            id -> journey.send(key("send"), id, number(), signedIn.name(), device())));
        }
    }

    /** Worked out when it is asked for, not for each card of a long day. */
    private Div bestWay() {
        WayAnswer answer = new WayAnswer(
                () -> advice.of(entry.first(), entry.parcel()),
                entry.way(),
                figures,
                best -> act("workshop.saved", id -> parcels.by(id, best, signedIn.name())));
        Button ask = new Button(getTranslation("delivery.way.ask"), press -> answer.say());
        ask.setAriaLabel(
                getTranslation("delivery.way.ask") + ", " + entry.first().number());
        ask.addThemeVariants(ButtonVariant.TERTIARY);
        answer.add(ask);
        return answer;
    }

    private void toCollect() {
        boolean ready = entry.state() == ParcelState.READY;
        if (ready) {
            add(tell(Occasion.READY));
            // Reminded is who was written to: the letter tells the parcel when it is kept.
            big(new Button(getTranslation("delivery.remind"), press -> write(Occasion.REMINDER)), "delivery.remind");
        } else {
            big(
                    "delivery.mark-ready",
                    true,
                    () -> act(
                            "delivery.done.READY",
                            Optional.of(Occasion.READY),
                            id -> journey.ready(id, signedIn.name())));
        }
        big(
                "delivery.mark-collected",
                ready,
                () -> act(
                        "delivery.done.COLLECTED",
                        id -> journey.collected(key("collected"), id, signedIn.name(), device())));
    }

    /** What lies together by mistake, or turns out to go elsewhere, comes apart again. */
    private Div takingOut() {
        Div all = new Div();
        all.addClassName("pw-row");
        for (Order order : entry.orders()) {
            BookButton out = new BookButton(
                    getTranslation("delivery.alone", order.number()),
                    () -> act("delivery.alone.done", id -> parcels.alone(order.id(), signedIn.name())));
            out.addThemeVariants(ButtonVariant.TERTIARY);
            all.add(out);
        }
        return all;
    }

    /** Nothing goes to an address that nobody looked through. */
    private Button address(HandOverParts parts) {
        Button check = new Button(
                getTranslation("delivery.address.check"),
                press -> new AddressDialog(entry.first(), parts.addresses(), figures, signedIn.name(), again).open());
        check.setAriaLabel(getTranslation("delivery.address.check") + ", "
                + entry.first().customer().name());
        check.addClassName("delivery-big");
        return check;
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
                    act("delivery.tracking.kept", this::keepTracking);
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
        number().ifPresent(number -> parcels.tracked(id, number, signedIn.name()));
    }

    /** As it was typed, as long as it is not kept. */
    private Optional<String> number() {
        return Optional.ofNullable(typed.get(entry.first().id().value())).filter(number -> !number.isBlank());
    }

    private void big(String key, boolean primary, BooleanSupplier press) {
        BookButton button = new BookButton(getTranslation(key), press);
        if (primary) {
            button.addThemeVariants(ButtonVariant.PRIMARY);
        }
        big(button, key);
    }

    private void big(Button button, String key) {
        button.setAriaLabel(getTranslation(key) + ", "
                + entry.first().customer().name() + ", " + entry.first().number());
        button.addClassName("delivery-big");
        add(button);
    }

    private boolean act(String done, Consumer<ParcelId> what) {
        return act(done, Optional.empty(), what);
    }

    /**
     * Puts the order into a parcel first where it lies in none.
     *
     * @param tell what the customer may be told once it is done
     */
    private boolean act(String done, Optional<Occasion> tell, Consumer<ParcelId> what) {
        // named: several may be pressed before the words have been read
        Sentence said = Sentence.of(done, entry.first().customer().name());
        boolean acted = Feedback.unlessRefused(figures, said, () -> {
            ParcelId id = entry.parcel()
                    .map(Parcel::id)
                    .orElseGet(() -> parcels.pack(entry.ids(), signedIn.name()).id());
            what.accept(id);
            typed.remove(entry.first().id().value());
        });
        if (acted) {
            again.run();
            tell.ifPresent(this::write);
        }
        return acted;
    }

    private void write(Occasion occasion) {
        letters.write(entry.first(), occasion, again);
    }

    /** The letter that came up when it was made ready or sent, once more. */
    private Button tell(Occasion occasion) {
        Button tell = new Button(getTranslation("delivery.tell"), press -> write(occasion));
        tell.setAriaLabel(getTranslation("delivery.tell") + ", "
                + entry.first().customer().name());
        tell.addThemeVariants(ButtonVariant.TERTIARY);
        return tell;
    }

    private BookingKey key(String what) {
        return BookingKey.seen(what, entry.first().number(), entry.seen());
    }

    private static String device() {
        return Optional.ofNullable(VaadinRequest.getCurrent())
                .map(request -> request.getHeader("User-Agent"))
                .orElse("");
    }
}
