package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.Key;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.progressbar.ProgressBar;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.router.PageTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.EmptyState;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.display.fields.InputModes;
import puzzleworkshop.display.progress.WorkingBar;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.sheets.MeasuredOutlines;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.list.RackByPhoto;
import puzzleworkshop.sheets.list.StockTaking;
import puzzleworkshop.sheets.ui.photo.StockByPhoto;
import puzzleworkshop.workshop.SignedIn;

/** Walking along the rack: type or scan each number, or tick it in the list; what is left over is missing. */
@Route("sheets/stock-take")
@PageTitle("Take stock")
@PermitAll
@StyleSheet("context://sheets.css")
public class StockTakeView extends Div {

    private static final int PORTION = 50;
    private static final Pattern NUMBER = Pattern.compile("(\\d+)\\s*/?$");

    private final transient StockTaking taking;
    private final transient SheetRack rack;
    private final transient SignedIn who;
    private final transient Formatter figures;
    private final transient RackLabels words;
    private final Div body = new Div();
    private final Div last = new Div();

    private final StockByPhoto byPhoto;

    public StockTakeView(
            StockTaking taking,
            SheetRack rack,
            SignedIn who,
            Formatter figures,
            RackLabels words,
            MeasuredOutlines measured,
            RackByPhoto recognised,
            Photos photos) {
        byPhoto = new StockByPhoto(figures, measured, recognised, photos, who, this::seenInPhoto);
        this.taking = taking;
        this.rack = rack;
        this.who = who;
        this.figures = figures;
        this.words = words;
        addClassName("pw-page");
        PageHead head = new PageHead(figures.text("sheets.stock.title"));
        body.addClassName("pw-stack");
        last.getElement().setAttribute("role", "status");
        add(head, words.doors("/stock-take"), body);
        fill();
    }

    private void fill() {
        body.removeAll();
        taking.current().ifPresentOrElse(this::walk, this::start);
    }

    private void start() {
        Button start = new Button(figures.text("sheets.stock.start"), event -> {
            taking.start(who.name());
            fill();
        });
        start.addThemeVariants(ButtonVariant.PRIMARY);
        EmptyState empty = new EmptyState(
                figures.text("sheets.stock.start.title"), figures.text("sheets.stock.start.text"), start);
        body.add(empty);
    }

    private void walk(StockTaking.Walk walk) {
        ProgressBar bar =
                new WorkingBar(0, Math.max(1, walk.expected()), Math.min(walk.seen(), Math.max(1, walk.expected())));
        Span count = new Span(figures.text("sheets.stock.count", walk.seen(), walk.expected()));
        TextField number = new TextField(figures.text("sheets.stock.number"));
        InputModes.numbers(number, false);
        Button tick = new Button(figures.text("sheets.stock.tick"), event -> tick(number));
        tick.addThemeVariants(ButtonVariant.PRIMARY);
        Div row = new Div(number, tick, new Anchor("sheets/enter", figures.text("sheets.stock.new")));
        row.addClassNames("pw-row", "sheets-tick");
        tick.addClickShortcut(Key.ENTER).listenOn(row);
        number.focus();
        Div section = new Div(count, bar, row, last);
        section.addClassName("pw-section");
        body.add(section, byPhoto, missing(walk), finish(walk));
    }

    /** Takes a bare number or what a scanner types: the address on the label, which ends with it. */
    private void tick(TextField number) {
        Matcher matcher = NUMBER.matcher(number.getValue().strip());
        try {
            if (!matcher.find()) {
                throw new Refused("sheets.stock.notanumber");
            }
            seen(new SheetId(Long.parseLong(matcher.group(1))));
        } catch (Refused refused) {
            number.setInvalid(true);
            number.setErrorMessage(figures.say(refused));
            number.focus();
            number.getElement().executeJs("this.inputElement.select()");
        }
    }

    private void seenInPhoto(SheetId id) {
        try {
            seen(id);
        } catch (Refused meanwhile) {
            Feedback.tell(figures.say(meanwhile), true);
        }
    }

    private void seen(SheetId id) {
        Sheet sheet = taking.seen(id, who.name());
        last.removeAll();
        Button back = new Button(figures.text("sheets.stock.untick"), event -> {
            taking.notSeen(id);
            last.removeAll();
            fill();
        });
        back.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        last.add(new Span(figures.text("sheets.stock.ticked", id.toString(), words.shape(sheet))), back);
        fill();
    }

    private Div missing(StockTaking.Walk walk) {
        PageSection section =
                new PageSection(figures.text("sheets.stock.missing", Math.max(0, walk.expected() - walk.seen())));
        List<SheetId> some = taking.missing(0, PORTION);
        String place = null;
        for (SheetId id : some) {
            Sheet sheet = rack.find(id).orElseThrow();
            if (!sheet.facts().place().equals(place)) {
                place = sheet.facts().place();
                section.add(new Span(
                        place.isEmpty() ? figures.text("sheets.stock.noplace") : figures.text("sheets.at", place)));
            }
            Button there = new Button(figures.text("sheets.stock.there"), event -> {
                try {
                    seen(id);
                } catch (Refused meanwhile) {
                    Feedback.tell(figures.say(meanwhile), true);
                    fill();
                }
            });
            there.setAriaLabel(figures.text("sheets.stock.tickednumber", id.toString()));
            there.addClassName("sheets-there");
            Anchor number = new Anchor("sheets/number/" + id, id.toString());
            number.addClassName("sheets-number");
            Div line = new Div(new SheetDrawing(figures).show(sheet), number, new Span(words.shape(sheet)), there);
            line.addClassName("sheets-missing");
            section.add(line);
        }
        if (walk.expected() - walk.seen() > some.size()) {
            section.add(new Span(figures.text("sheets.stock.andmore", walk.expected() - walk.seen() - some.size())));
        }
        return section;
    }

    private Div finish(StockTaking.Walk walk) {
        int missing = Math.max(0, walk.expected() - walk.seen());
        Checkbox scrap = new Checkbox(figures.text("sheets.stock.scrapmissing"), false);
        scrap.setVisible(missing > 0);
        Button finish = new Button(figures.text("sheets.stock.finish"), event -> {
            StockTaking.Outcome outcome = taking.finish(scrap.getValue(), who.name());
            last.removeAll();
            fill();
            body.addComponentAsFirst(outcome(outcome));
        });
        scrap.addValueChangeListener(event -> finish.setText(
                event.getValue()
                        ? figures.text("sheets.stock.finish.scrap", missing)
                        : figures.text("sheets.stock.finish")));
        Div row = new Div(scrap, finish);
        row.addClassName("pw-row");
        return row;
    }

    private Div outcome(StockTaking.Outcome outcome) {
        PageSection section = new PageSection(
                figures.text("sheets.stock.outcome"),
                line("sheets.stock.outcome.missing", outcome.missing()),
                new Paragraph(figures.text("sheets.stock.finished", outcome.left())),
                line("sheets.stock.outcome.fresh", outcome.fresh()));
        section.getElement().setAttribute("role", "status");
        return section;
    }

    private Div line(String key, List<SheetId> ids) {
        Div line = new Div(new Span(figures.text(key, ids.size())));
        line.addClassName("sheets-children");
        ids.forEach(id -> line.add(new Span(" "), new Anchor("sheets/number/" + id, id.toString())));
        return line;
    }
}
