package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.AttachEvent;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.JavaScript;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.BeforeEvent;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.HasUrlParameter;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.OptionalParameter;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.server.VaadinRequest;
import jakarta.annotation.security.PermitAll;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.bench.Ticked;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.runtime.Broadcaster;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Stage;

/** What to do next, stage by stage; made for a phone or tablet lying on the bench. */
@Route("bench")
@Menu(title = "bench.title", order = 30)
@PermitAll
@StyleSheet("context://bench.css")
@JavaScript("context://bench.js")
public class BenchView extends Div implements HasUrlParameter<String>, HasDynamicTitle {

    private final transient Bench bench;
    private final transient Orders orders;
    private final transient Broadcaster broadcaster;
    private transient Broadcaster.Listening live;
    private final transient Formatter figures;
    private final transient SignedIn signedIn;
    private final transient JobCardMaker cards;
    private final StageBar stages = new StageBar();
    private final LastTicks lastTicks;
    private final Div queue = new Div();
    private final Div job = new Div();
    private final Div foot = new Div();
    private final Set<OrderId> together = new LinkedHashSet<>();
    private Stage stage = Stage.PRINT;
    private transient Optional<OrderId> chosen = Optional.empty();
    private transient Optional<OrderId> onShow = Optional.empty();
    private transient List<Object> onCard = List.of();

    /** The one order that was ticked last on this page, to go on with. */
    private transient Optional<OrderId> justDone = Optional.empty();

    public BenchView(
            Bench bench,
            Orders orders,
            Broadcaster broadcaster,
            Formatter figures,
            SignedIn signedIn,
            JobCardMaker cards) {
        this.bench = bench;
        this.orders = orders;
        this.broadcaster = broadcaster;
        this.figures = figures;
        this.signedIn = signedIn;
        this.cards = cards;
        addClassNames("pw-page", "bench-page");
        this.lastTicks = new LastTicks(bench, orders, figures, signedIn, this::show);
        queue.addClassName("bench-queue");
        job.addClassName("bench-job");
        foot.addClassName("bench-foot");
        Div columns = new Div(queue, job);
        columns.addClassName("bench-columns");
        add(new H1(getTranslation("bench.title")), stages, lastTicks, columns, foot);
    }

    @Override
    public void setParameter(BeforeEvent event, @OptionalParameter String name) {
        Stage asked = Arrays.stream(Stage.values())
                .filter(s -> s.name().equalsIgnoreCase(name))
                .findFirst()
                .orElseGet(this::firstWithWork);
        chosen = Optional.ofNullable(event.getLocation()
                        .getQueryParameters()
                        .getSingleParameter("order")
                        .orElse(null))
                .flatMap(orders::findByNumber)
                .map(order -> order.id());
        if (asked != stage) {
            together.clear();
        }
        justDone = Optional.empty();
        stage = asked;
        show();
        if (chosen.isPresent() && chosen.equals(onShow)) {
            bringJob();
        }
    }

    private Stage firstWithWork() {
        Map<Stage, Long> counts = bench.counts();
        return bench.firstWorkable()
                .or(() -> Arrays.stream(Stage.values())
                        .filter(counts::containsKey)
                        .findFirst())
                .orElse(Stage.PRINT);
    }

    @Override
    public String getPageTitle() {
        return getTranslation("bench.title");
    }

    @Override
    protected void onAttach(AttachEvent event) {
        live = UiPush.refresh(
                this, broadcaster, change -> change instanceof Ticked || WeekPlan.restsOn(change), () -> show(false));
    }

    private void show() {
        show(true);
    }

    /** @param anew whether the open card is made again although nothing about its order has changed: what is half typed on it goes */
    private void show(boolean anew) {
        if (live != null) {
            live.seen();
        }
        Map<Stage, Long> counts = bench.counts();
        stages.show(counts, stage);
        List<Waiting> waiting = bench.queue(stage);
        Set<OrderId> here = waiting.stream().map(w -> w.order().id()).collect(Collectors.toSet());
        together.retainAll(here);
        lastTicks.show();
        queue.removeAll();
        queue.add(new H2(getTranslation(stage.textKey())));
        cards.aboveTheQueue(stage).forEach(queue::add);
        if (waiting.isEmpty()) {
            Div empty = new Div(
                    new Paragraph(getTranslation("bench.empty", getTranslation(stage.textKey()))),
                    new Paragraph(getTranslation(counts.isEmpty() ? "bench.empty.all" : "bench.empty.next")));
            empty.addClassName("pw-empty");
            queue.add(empty);
        }
        // News from another screen never changes the card under a thumb that is just about to press 'done'.
        Optional<OrderId> wanted = anew ? chosen : onShow.or(() -> chosen);
        boolean gone = !anew && onShow.isPresent() && !here.contains(onShow.get());
        Waiting open = gone
                ? null
                : waiting.stream()
                        .filter(w -> wanted.equals(Optional.of(w.order().id())))
                        .findFirst()
                        .or(() -> waiting.stream()
                                .filter(w -> w.mayNot().isEmpty())
                                .findFirst())
                        .orElse(waiting.isEmpty() ? null : waiting.getFirst());
        for (Waiting w : waiting) {
            queue.add(new QueueCard(
                    w, figures, w == open, together.contains(w.order().id()), this::choose, this::gather));
        }
        List<Object> now = open == null
                ? List.of(stage, gone)
                : List.of(stage, open.order(), open.boards(), open.running(), open.restsUntil());
        if (anew || !now.equals(onCard)) {
            onCard = now;
            job.removeAll();
            if (gone) {
                Div left = new Div(new Paragraph(
                        getTranslation("bench.gone", orders.get(onShow.get()).number())));
                left.addClassName("pw-empty");
                job.add(left);
            }
            if (open != null) {
                job.add(cards.card(
                        open,
                        stage,
                        () -> tick(keyOf(open.order()), List.of(open.order().id())),
                        this::show));
            }
        }
        if (!gone) {
            onShow = Optional.ofNullable(open).map(w -> w.order().id());
        }
        showFoot();
    }

    private void choose(Waiting w) {
        justDone = Optional.empty();
        chosen = Optional.of(w.order().id());
        show();
        bringJob();
    }

    /** On a phone the job lies below its queue. The router sets a new page to its top, so this comes after it. */
    private void bringJob() {
        job.getElement().setAttribute("tabindex", "-1");
        job.getElement()
                .executeJs(
                        "this.focus({preventScroll: true});if (matchMedia('(max-width: 800px)').matches) setTimeout(()"
                                + " => this.scrollIntoView({block: 'start'}), 60)");
    }

    private void gather(OrderId order, boolean with) {
        if (with) {
            together.add(order);
        } else {
            together.remove(order);
        }
        showFoot();
    }

    private void showFoot() {
        foot.removeAll();
        foot.setVisible(together.size() > 1 || justDone.isPresent());
        if (together.size() < 2) {
            justDone.ifPresent(this::whatComesNext);
            return;
        }
        BookingKey key = BookingKey.fresh();
        BookButton all = new BookButton(
                getTranslation("bench.together", together.size(), getTranslation(stage.textKey())), () -> {
                    tick(key, List.copyOf(together));
                    return false;
                });
        all.addThemeVariants(ButtonVariant.PRIMARY);
        all.addClassName("bench-big");
        foot.add(all);
    }

    private void whatComesNext(OrderId done) {
        AfterTick ways = new AfterTick(orders.find(done), onShow.flatMap(orders::find), stage, () -> {
            justDone = Optional.empty();
            showFoot();
            bringJob();
        });
        foot.add(ways);
        foot.setVisible(ways.leadsOn());
    }

    /** Of this order as it stands now: two screens that show it so mean the same tick. */
    private BookingKey keyOf(Order order) {
        return BookingKey.seen("tick", stage, order.number(), order.version());
    }

    private void tick(BookingKey key, List<OrderId> which) {
        List<Waiting> asked = bench.queue(stage).stream()
                .filter(w -> which.contains(w.order().id()))
                .toList();
        ConfirmEarlyTick.ask(asked, figures, () -> tickNow(key, which));
    }

    private void tickNow(BookingKey key, List<OrderId> which) {
        String device = Optional.ofNullable(VaadinRequest.getCurrent())
                .map(r -> r.getHeader("User-Agent"))
                .orElse("");
        Bench.Outcome outcome = bench.tick(key, which, stage, signedIn.name(), device);
        outcome.refused().forEach((order, why) -> Feedback.tell(figures.say(why), true));
        if (outcome.done().isEmpty()) {
            // What was refused stays open: no other order's card comes under the thumb.
            show(false);
            return;
        }
        Feedback.tell(
                getTranslation(
                        "bench.done",
                        getTranslation(stage.textKey()),
                        outcome.done().size()),
                false);
        together.clear();
        chosen = Optional.empty();
        justDone = outcome.done().size() == 1 ? Optional.of(outcome.done().getFirst()) : Optional.empty();
        // An address that named the order done would open nothing when it is loaded again.
        getUI().ifPresent(ui -> ui.getPage().getHistory().replaceState(null, StageBar.address(stage)));
        show();
    }
}
