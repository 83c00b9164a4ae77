package puzzleworkshop.proofs.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.JavaScript;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.Header;
import com.vaadin.flow.component.html.Image;
import com.vaadin.flow.component.html.Main;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.router.BeforeEvent;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.HasUrlParameter;
import com.vaadin.flow.router.OptionalParameter;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.server.Command;
import com.vaadin.flow.server.VaadinRequest;
import com.vaadin.flow.server.auth.AnonymousAllowed;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.Supplier;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.EmptyState;
import puzzleworkshop.display.blocks.FactList;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.ReceivedFile;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.preview.PuzzleDifficulty;
import puzzleworkshop.orders.ui.StageStrip;
import puzzleworkshop.pattern.judged.Difficulty;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.proofs.CustomerDesk;
import puzzleworkshop.proofs.CustomerDesk.Sight;
import puzzleworkshop.proofs.Token;
import puzzleworkshop.workshop.Workshop;

/** The customer's page: one order, reached by its private link, without an account. */
@Route(value = "p", autoLayout = false)
@AnonymousAllowed
@StyleSheet("context://proofs.css")
@JavaScript("context://alive.js")
public class ProofView extends Div implements HasUrlParameter<String>, HasDynamicTitle {

    private final transient CustomerDesk desk;
    private final transient Workshop workshop;
    private final transient PatternCache patterns;
    private final transient PuzzleDifficulty difficulty;
    private final transient Formatter figures;
    private final transient List<ProofSection> sections;
    private final Main page = new Main();
    private final Note refusal = Note.refusal();
    // Kept while the page is shown anew, so that nothing typed is lost.
    private final TextField name = new TextField(getTranslation("proofs.name"));
    private final WishForm wish = new WishForm(this);
    private PuzzleOnProof puzzle;
    private transient Token token;
    private transient String from;
    private transient Sight sight;

    public ProofView(
            CustomerDesk desk,
            Workshop workshop,
            PatternCache patterns,
            PuzzleDifficulty difficulty,
            Formatter figures,
            List<ProofSection> sections) {
        this.difficulty = difficulty;
        this.sections = List.copyOf(sections);
        this.desk = desk;
        this.workshop = workshop;
        this.patterns = patterns;
        this.figures = figures;
        addClassName("proofs");
        getElement()
                .setAttribute("data-alive-away", getTranslation("proofs.away"))
                .setAttribute("data-alive-restarted", getTranslation("proofs.restarted"));
        Header header = new Header(new Paragraph(workshop.profile().name()));
        header.addClassName("proofs-head");
        page.addClassName("proofs-page");
        add(header, page);
    }

    @Override
    public void setParameter(BeforeEvent event, @OptionalParameter String text) {
        token = new Token(text == null ? "" : text);
        from = VaadinRequest.getCurrent().getRemoteAddr();
        try {
            Sight first = desk.look(token, from);
            name.setValue(first.order().customer().name());
            show(first);
        } catch (Refused closed) {
            page.removeAll();
            EmptyState empty = new EmptyState(getTranslation("proofs.closed.title"), figures.say(closed));
            page.add(empty);
        }
    }

    /** Does what the customer asked and shows the order as it is then; a refusal is said and loses nothing typed. */
    void ask(Supplier<Sight> asked) {
        ask(asked, refused -> false);
    }

    /** The same for a form that may say a refusal itself, beside the field it is about. */
    void ask(Supplier<Sight> asked, Predicate<Refused> saysItself) {
        try {
            show(asked.get());
        } catch (Refused refused) {
            if (saysItself.test(refused)) {
                say("");
                return;
            }
            if (refused.sentence().key().equals("proofs.changed-meanwhile")) {
                show(desk.look(token, from));
            }
            say(figures.say(refused));
        }
    }

    Sight sight() {
        return sight;
    }

    Token token() {
        return token;
    }

    String from() {
        return from;
    }

    Formatter figures() {
        return figures;
    }

    CustomerDesk desk() {
        return desk;
    }

    /** The address of a picture of this page: through the token, with a mark that changes with what is shown. */
    String address(String kind, int px) {
        String shown = kind.equals("picture") ? sight.picture().orElseThrow().sha256() : sight.fingerprint();
        String mark = shown.isEmpty() ? "none" : shown.substring(0, 16);
        return "p/" + token.text() + "/" + kind + "/" + mark + "/" + px + ".jpg";
    }

    Difficulty difficulty() {
        return difficulty.of(sight.order());
    }

    /** As many pieces as are not too hard for a child of this age, and how they meet. */
    Difficulty.ForAge forAge(int years) {
        return difficulty.forAge(sight.order(), years, workshop.tradeNumbers().smallestPiece());
    }

    MarksOnPicture marks() {
        return wish.marks();
    }

    String cutLines() {
        return patterns.of(sight.order().puzzle().pattern()).svgPathData();
    }

    Length overhang() {
        return workshop.tradeNumbers().overhang();
    }

    void say(String sentence) {
        refusal.setText(sentence);
        refusal.setVisible(!sentence.isEmpty());
        if (!sentence.isEmpty()) {
            refusal.scrollIntoView();
        }
    }

    void show(Sight now) {
        sight = now;
        say("");
        page.removeAll();
        Order order = now.order();
        puzzle = new PuzzleOnProof(this);
        Div left = new Div(puzzle);
        left.addClassName("proofs-picture");
        Div right = new Div();
        right.addClassName("proofs-side");
        right.add(facts(order));
        if (order.approval().isPresent() || !order.mayStillChange()) {
            right.add(progress(order));
        }
        sections.forEach(section -> section.show(
                        order, () -> desk.look(token, from).order(), () -> show(desk.look(token, from)))
                .ifPresent(right::add));
        if (order.mayStillChange()
                && order.approval().isEmpty()
                && now.picture().isPresent()) {
            right.add(new ApprovalForm(this, name));
        }
        if (order.mayStillChange()) {
            right.add(wish);
        }
        Div columns = new Div(left, right);
        columns.addClassName("proofs-columns");
        page.add(new H1(getTranslation("proofs.title", order.customer().name())));
        if (order.mayStillChange() && order.approval().isEmpty()) {
            page.add(awaited(now.picture().isPresent()));
        }
        page.add(refusal, columns);
    }

    /** At the top, since the answer itself stands below the picture. */
    private Div awaited(boolean picture) {
        Paragraph words = new Paragraph(getTranslation(picture ? "proofs.awaited" : "proofs.awaited.picture"));
        Div notice = new Div(words);
        notice.addClassNames("pw-note", "proofs-awaited");
        notice.getElement().setAttribute("data-kind", "warn");
        if (picture) {
            Button go = button(
                    "proofs.awaited.go",
                    false,
                    () -> page.getElement()
                            .executeJs(
                                    "const form = this.querySelector('.proofs-approval'); form?.scrollIntoView({block:"
                                            + " 'start'});form?.querySelector('input')?.focus({preventScroll: true})"));
            notice.add(go);
        }
        return notice;
    }

    private Div facts(Order order) {
        FactList facts = new FactList();
        facts.fact(getTranslation("proofs.fact.number"), order.number());
        facts.fact(
                getTranslation("proofs.fact.size"), figures.size(order.puzzle().finished()));
        facts.fact(
                getTranslation("proofs.fact.pieces"),
                String.valueOf(order.puzzle().pieces()));
        if (order.quantity() > 1) {
            facts.fact(getTranslation("proofs.fact.quantity"), String.valueOf(order.quantity()));
        }
        facts.fact(
                getTranslation("proofs.fact.age"),
                getTranslation("orders.age." + order.puzzle().age().name()));
        facts.fact(
                getTranslation("proofs.fact.price"), figures.money(order.price().gross()));
        facts.fact(
                getTranslation("proofs.fact.date"),
                order.promised().map(figures::day).orElse(getTranslation("proofs.no-date")));
        PageSection section = new PageSection(getTranslation("proofs.facts"), facts);
        return section;
    }

    private Div progress(Order order) {
        PageSection section = new PageSection(getTranslation("proofs.progress"));
        order.approval().ifPresent(approval -> {
            Note line = new Note(Note.Kind.GOOD, figures.text("proofs.approved", approval.by(), approval.at()));
            section.add(line);
        });
        if (order.state() == OrderState.CONFIRMED) {
            section.add(new StageStrip(order, figures));
            order.next()
                    .ifPresent(stage ->
                            section.add(new SmallText(getTranslation("proofs.next", getTranslation(stage.textKey())))));
        } else {
            section.add(
                    new SmallText(getTranslation("proofs.state." + order.state().name())));
        }
        return section;
    }

    Image face() {
        Image image = new Image(
                address("face", 1600),
                getTranslation("proofs.face", sight.order().puzzle().pieces()));
        image.getElement()
                .setAttribute(
                        "srcset",
                        address("face", 640) + " 640w, " + address("face", 1080) + " 1080w, " + address("face", 1600)
                                + " 1600w");
        image.getElement().setAttribute("sizes", "(max-width: 900px) 100vw, 60vw");
        return image;
    }

    /** In the request's own thread: reading a picture takes seconds. */
    Command take(ReceivedFile file) throws IOException {
        try (InputStream content = file.open()) {
            Sight taken = desk.send(token, from, file.name(), content);
            return () -> show(taken);
        }
    }

    Button button(String key, boolean primary, Runnable action) {
        Button button = new Button(getTranslation(key), click -> action.run());
        if (primary) {
            button.addThemeVariants(ButtonVariant.PRIMARY);
        }
        return button;
    }

    @Override
    public String getPageTitle() {
        return getTranslation("proofs.page-title", workshop.profile().name());
    }
}
