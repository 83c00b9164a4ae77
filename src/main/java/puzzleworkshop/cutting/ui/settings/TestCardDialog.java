package puzzleworkshop.cutting.ui.settings;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.springframework.beans.factory.config.ConfigurableBeanFactory;
import org.springframework.context.annotation.Scope;
import org.springframework.stereotype.Component;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.cutting.settings.Trial.Source;
import puzzleworkshop.cutting.trials.TestCard;
import puzzleworkshop.cutting.trials.TestCard.Square;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.sheets.find.Suggestion;
import puzzleworkshop.sheets.ui.SheetDrawing;
import puzzleworkshop.workshop.SignedIn;

/** A card of squares over speeds and powers: its file, an offcut to cut it from, and what came of each square. */
@Component
@Scope(ConfigurableBeanFactory.SCOPE_PROTOTYPE)
class TestCardDialog extends Dialog {

    private static final int OFFCUTS = 3;

    /** What a square can have come to, in the order of a thumb's list. */
    private static final List<Finding> OUTCOMES = Stream.concat(
                    Stream.of(Finding.of(Result.NOT_THROUGH, 1), Finding.of(Result.PARTLY, 1)),
                    IntStream.rangeClosed(0, Finding.WORST_CHARRING).mapToObj(c -> Finding.of(Result.THROUGH, c)))
            .toList();

    private final transient Settings settings;
    private final transient SheetFinder sheets;
    private final transient Formatter figures;
    private final transient SignedIn who;
    private final transient BookingKey key = BookingKey.fresh();
    private final Map<Square, Select<Finding>> outcomes = new LinkedHashMap<>();

    TestCardDialog(Settings settings, SheetFinder sheets, Formatter figures, SignedIn who) {
        this.settings = settings;
        this.sheets = sheets;
        this.figures = figures;
        this.who = who;
        setWidth("52rem");
        setHeaderTitle(figures.text("cutting.card"));
    }

    TestCardDialog show(CutSetting setting, Runnable recorded) {
        TestCard card = TestCard.around(setting);
        Anchor file = new Anchor(
                DownloadHandler.fromInputStream(event -> {
                    byte[] svg = card.svg().getBytes(StandardCharsets.UTF_8);
                    return new DownloadResponse(
                            new ByteArrayInputStream(svg), "test-card.svg", "image/svg+xml", svg.length);
                }),
                figures.text("cutting.card.file"));
        file.addClassName("cutting-file");
        Div drawing = new Div(new SvgBox("cutting-card-drawing").draw(new TestCardDrawing(card, figures).svg()), file);
        drawing.addClassName("pw-stack");
        Div top = new Div(drawing, offcuts(setting, card));
        top.addClassName("cutting-card-top");
        Paragraph lead = new Paragraph(figures.text("cutting.card.lead", card.size(), card.passes()));
        SmallText caution = new SmallText(figures.text("cutting.job.caution"));
        add(lead, top, caution, new H3(figures.text("cutting.card.outcome")), grid(card));
        Button save = new BookButton(figures.text("cutting.card.save"), () -> save(setting, card, recorded));
        save.addThemeVariants(ButtonVariant.PRIMARY);
        getFooter().add(new Button(figures.text("cutting.close"), event -> close()), save);
        return this;
    }

    private Div offcuts(CutSetting setting, TestCard card) {
        BlankWish wish = new BlankWish(
                card.size(),
                Set.of(setting.board().material()),
                Set.of(Grade.valueOf(setting.board().grade())),
                setting.board().thickness(),
                setting.machine().bowLimit(),
                BlankWish.GrainWish.ANY);
        List<Suggestion> found = sheets.suggest(wish, OFFCUTS);
        Div places = new Div(new H3(figures.text("cutting.card.offcut")));
        places.addClassName("pw-stack");
        if (found.isEmpty()) {
            places.add(new Paragraph(figures.text("cutting.card.offcut.none")));
            return places;
        }
        SheetDrawing sheet = new SheetDrawing(figures);
        Span reason = new Span();
        reason.addClassName("pw-small");
        Select<Suggestion> choice = new Select<>();
        choice.setLabel(figures.text("cutting.card.offcut.choose"));
        choice.setItems(found);
        choice.setItemLabelGenerator(suggestion -> figures.text(
                "cutting.card.offcut.item",
                Long.toString(suggestion.sheet().id().value()),
                suggestion.sheet().facts().place()));
        choice.addValueChangeListener(event -> {
            sheet.show(event.getValue());
            reason.setText(figures.say(event.getValue().reason()));
        });
        choice.setValue(found.getFirst());
        places.add(choice, sheet, reason);
        return places;
    }

    private Div grid(TestCard card) {
        Div grid = new Div();
        grid.addClassName("cutting-card-grid");
        grid.getStyle().set("--columns", Integer.toString(card.powers().size()));
        grid.add(new Span(""));
        card.powers().forEach(power -> grid.add(new Span(figures.percent(power))));
        for (Square square : card.squares()) {
            if (square.column() == 0) {
                grid.add(new Span(figures.text(
                        "cutting.card.row",
                        figures.number(square.speed().toMmPerMinute(), 0),
                        figures.number(square.speed().mmPerSecond(), 2))));
            }
            Select<Finding> outcome = new Select<>();
            outcome.setItems(OUTCOMES);
            outcome.setEmptySelectionAllowed(true);
            outcome.setEmptySelectionCaption("–");
            outcome.setItemLabelGenerator(finding -> finding == null ? "–" : inShort(finding));
            outcome.setAriaLabel(figures.text("cutting.card.square", square.speed(), square.power()));
            outcomes.put(square, outcome);
            grid.add(outcome);
        }
        return grid;
    }

    private String inShort(Finding finding) {
        return finding.result() == Result.THROUGH
                ? figures.text("cutting.card.through", finding.charring())
                : figures.text(finding.result().textKey());
    }

    private boolean save(CutSetting setting, TestCard card, Runnable recorded) {
        long told = outcomes.values().stream()
                .filter(outcome -> outcome.getValue() != null)
                .count();
        if (told == 0) {
            Feedback.tell(figures.text("cutting.card.nothing"), true);
            return false;
        }
        boolean done = Feedback.unlessRefused(
                figures,
                "cutting.card.saved",
                () -> outcomes.forEach((square, outcome) -> {
                    if (outcome.getValue() != null) {
                        settings.record(
                                key.part(square),
                                setting.machine(),
                                setting.board(),
                                card.parameters(square, setting.machine().beam().lensGap()),
                                outcome.getValue(),
                                Source.TEST_CARD,
                                who.name(),
                                Optional.empty());
                    }
                }));
        if (done) {
            close();
            recorded.run();
        }
        return done;
    }
}
