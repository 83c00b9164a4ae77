package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.server.VaadinSession;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.boards.BoardChoice;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.time.CutTime;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.OfferDesk;
import puzzleworkshop.offers.PuzzleWish;
import puzzleworkshop.offers.Wish;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.ui.SketchDesk;
import puzzleworkshop.workshop.Workshop;

/** Prices what is drawn without an order as one puzzle of the usual board, and carries it over to New order. */
@Component
class PatternSketches implements SketchDesk {

    /** What waits in a person's session until New order opens. */
    record Sketch(PatternSpec spec, IntendedAge age) {}

    private final OfferDesk desk;
    private final BoardChoice boards;
    private final Workshop workshop;
    private final Machines machines;
    private final Formatter figures;

    PatternSketches(OfferDesk desk, BoardChoice boards, Workshop workshop, Machines machines, Formatter figures) {
        this.machines = machines;
        this.desk = desk;
        this.boards = boards;
        this.workshop = workshop;
        this.figures = figures;
    }

    @Override
    public Optional<Length> kerf() {
        return machines.standard().map(machine -> machine.beam().kerf());
    }

    @Override
    public Priced price(PatternSpec spec, IntendedAge age) {
        Optional<BoardKind> board = board(boards.kinds(), spec);
        if (board.isEmpty()) {
            return new Priced(
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    "",
                    List.of(figures.text("offers.new.board.missing")));
        }
        Offer offer = desk.workOut(wish(spec, age, board.get()));
        return new Priced(
                offer.laser().map(time -> figures.minutes(time.likely())),
                offer.price().map(price -> figures.money(price.answer().toPay())),
                offer.setting().map(setting -> setting.burntDepth().mm()),
                offer.setting()
                        .flatMap(setting -> offer.pattern()
                                .map(pattern -> CutTime.pace(
                                        pattern.lines(), setting.machine(), setting.parameters(), spec.thickness()))),
                board.get().grade(),
                offer.complaints().values().stream().map(figures::say).toList());
    }

    @Override
    public void order(PatternSpec spec, IntendedAge age) {
        VaadinSession.getCurrent().setAttribute(Sketch.class, new Sketch(spec, age));
        UI.getCurrent().navigate(NewOrderView.class);
    }

    /** What waits, once. */
    static Optional<Sketch> taken() {
        VaadinSession session = VaadinSession.getCurrent();
        Sketch waiting = session.getAttribute(Sketch.class);
        session.setAttribute(Sketch.class, null);
        return Optional.ofNullable(waiting);
    }

    /** As many pieces as were asked for where the grid came out: inside a curve fewer lie than in the grid. */
    static int wanted(PatternSpec spec) {
        return (int) Math.round(spec.grid().pieces() * spec.outline().share());
    }

    /** The first kind of this thickness, else of the first material. */
    static Optional<BoardKind> board(List<BoardKind> kinds, PatternSpec spec) {
        return kinds.stream()
                .filter(kind -> kind.thickness().equals(spec.thickness()))
                .findFirst()
                .or(() -> kinds.stream()
                        .findFirst()
                        .map(kind -> new BoardKind(kind.material(), kind.grade(), spec.thickness())));
    }

    private Wish wish(PatternSpec spec, IntendedAge age, BoardKind board) {
        return new Wish(
                new PuzzleWish(
                        spec.size(),
                        wanted(spec),
                        spec.style(),
                        spec.outline(),
                        spec.seed(),
                        age,
                        false,
                        spec.shapes(),
                        spec.design(),
                        spec.layout()),
                1,
                board,
                Optional.empty(),
                Optional.empty(),
                "",
                Wish.Day.ANY,
                Wish.Terms.usual(workshop.currency()));
    }
}
