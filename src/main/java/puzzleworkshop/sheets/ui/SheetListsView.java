package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.router.PageTitle;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import jakarta.annotation.security.PermitAll;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.list.SheetLabels;
import puzzleworkshop.sheets.list.StockList;
import puzzleworkshop.workshop.SignedIn;

/** The stock as a list: read one in with its columns named here and a look before anything is kept, write one, labels. */
@Route("sheets/lists")
@PageTitle("Lists and labels")
@PermitAll
@StyleSheet("context://sheets.css")
public class SheetListsView extends Div {

    private static final int PREVIEWED = 12;

    private final transient StockList lists;
    private final transient SheetRack rack;
    private final transient SheetLabels labels;
    private final transient SignedIn who;
    private final transient Formatter figures;
    private final transient RackLabels words;
    private final Div read = new Div();
    private transient StockList.Table table;
    private transient List<Optional<StockList.Column>> meaning = new ArrayList<>();

    public SheetListsView(
            StockList lists, SheetRack rack, SheetLabels labels, SignedIn who, Formatter figures, RackLabels words) {
        this.lists = lists;
        this.rack = rack;
        this.labels = labels;
        this.who = who;
        this.figures = figures;
        this.words = words;
        addClassName("pw-page");
        PageHead head = new PageHead(figures.text("sheets.lists.title"));
        read.addClassName("pw-stack");
        add(head, words.doors("/lists"));
        if (!who.isMaker()) {
            // lists carry what boards have cost
            add(in(), out());
        }
        add(printed());
    }

    private Div in() {
        FileUpload upload = new FileUpload(
                figures,
                5_000_000,
                Feedback::refusal,
                file -> {
                    String text = new String(file.content(), StandardCharsets.UTF_8);
                    return () -> open(text);
                },
                ".csv",
                ".txt");
        upload.setUploadButton(new Button(figures.text("sheets.list.choose")));
        Div section = section("sheets.list.in", "sheets.list.in.text");
        section.add(upload, read);
        return section;
    }

    private void open(String text) {
        try {
            table = lists.read(text);
            meaning = new ArrayList<>(table.guessed());
            columns();
        } catch (Refused refused) {
            read.removeAll();
            Feedback.tell(figures.say(refused), true);
        }
    }

    private void columns() {
        read.removeAll();
        Div heads = new Div();
        heads.addClassNames("pw-row", "sheets-columns");
        for (int i = 0; i < table.heads().size(); i++) {
            int column = i;
            Select<StockList.Column> choice = new Select<>();
            choice.setLabel(table.heads().get(i));
            choice.setHelperText(
                    table.rows().getFirst().size() > i ? table.rows().getFirst().get(i) : "");
            choice.setItems(StockList.Column.values());
            choice.setEmptySelectionAllowed(true);
            choice.setEmptySelectionCaption(figures.text("sheets.list.leaveout"));
            choice.setItemLabelGenerator(
                    c -> figures.text(c == null ? "sheets.list.leaveout" : "sheets.column." + c.name()));
            choice.setValue(meaning.get(i).orElse(null));
            choice.addValueChangeListener(event -> {
                meaning.set(column, Optional.ofNullable(event.getValue()));
                columns();
            });
            heads.add(choice);
        }
        boolean shaped = meaning.contains(Optional.of(StockList.Column.OUTLINE))
                || meaning.containsAll(
                        List.of(Optional.of(StockList.Column.WIDTH), Optional.of(StockList.Column.HEIGHT)));
        read.add(heads, shaped ? preview() : new Note(Note.Kind.WARN, figures.text("sheets.list.noshape")));
    }

    private Div preview() {
        List<StockList.Line> lines = lists.preview(table, meaning);
        List<StockList.Line> bad = lines.stream().filter(line -> !line.isGood()).toList();
        Div preview = new Div();
        preview.addClassName("pw-stack");
        bad.stream()
                .limit(50)
                .forEach(line -> line.faults()
                        .forEach(fault -> preview.add(
                                new Note(Note.Kind.BAD, figures.text("sheets.list.line", line.number(), fault)))));
        long unfit = lines.stream()
                .flatMap(line -> line.facts().stream())
                .filter(facts -> !facts.past().isFitForCutting())
                .count();
        if (unfit > 0) {
            preview.add(new Note(Note.Kind.WARN, figures.text("sheets.list.unfit", unfit)));
        }
        Div cards = new Div();
        cards.addClassName("sheets-taken");
        Function<String, String> materials = words.materialNames();
        lines.stream().filter(StockList.Line::isGood).limit(PREVIEWED).forEach(line -> {
            Span size = new Span(figures.size(line.outline().orElseThrow().bounds()));
            Span kind = new Span(words.kind(line.facts().orElseThrow(), materials));
            kind.addClassName("pw-small");
            Div card = new Div(
                    new SheetDrawing(figures)
                            .show(line.outline().get(), figures.text("sheets.list.lineof", line.number()), null),
                    new Div(size, kind));
            card.addClassName("sheets-taken-line");
            cards.add(card);
        });
        BookingKey key = BookingKey.fresh();
        BookButton take = new BookButton(figures.text("sheets.list.take", lines.size()), () -> {
            boolean taken =
                    Feedback.unlessRefused(figures, "sheets.list.taken", () -> lists.takeIn(key, lines, who.name()));
            if (taken) {
                read.removeAll();
            }
            return taken;
        });
        take.addThemeVariants(ButtonVariant.PRIMARY);
        take.setEnabled(bad.isEmpty());
        preview.add(cards, new Span(figures.text("sheets.list.counted", lines.size() - bad.size(), bad.size())), take);
        return preview;
    }

    private Div out() {
        Anchor csv = new Anchor(
                DownloadHandler.fromInputStream(event -> {
                    byte[] text = lists.write().getBytes(StandardCharsets.UTF_8);
                    return new DownloadResponse(new ByteArrayInputStream(text), "sheets.csv", "text/csv", text.length);
                }),
                figures.text("sheets.list.write"));
        csv.addClassName("sheets-main-link");
        Div section = section("sheets.list.out", "sheets.list.out.text");
        section.add(csv);
        return section;
    }

    private Div printed() {
        TextField numbers = new TextField(figures.text("sheets.label.numbers"));
        numbers.setHelperText(figures.text("sheets.label.numbers.help"));
        numbers.setWidthFull();
        Anchor pdf = new Anchor(
                DownloadHandler.fromInputStream(event -> {
                    String base = SheetLabels.base(
                            event.getRequest().getHeader("host"),
                            event.getRequest().isSecure());
                    byte[] file = labels.pdf(chosen(numbers.getValue()), base);
                    return new DownloadResponse(
                            new ByteArrayInputStream(file), "sheet-labels.pdf", "application/pdf", file.length);
                }),
                figures.text("sheets.label.printall"));
        pdf.addClassName("sheets-main-link");
        Div section = section("sheets.label.title", "sheets.label.text");
        section.add(numbers, pdf);
        return section;
    }

    /** The numbers typed, with ranges such as 3-9; none typed: all in the rack, the newest thousand at most. */
    private List<Sheet> chosen(String typed) {
        List<Sheet> chosen = new ArrayList<>();
        for (String part : typed.strip().split("[,;\\s]+")) {
            if (part.matches("\\d{1,9}(-\\d{1,9})?")) {
                String[] ends = part.split("-");
                long from = Long.parseLong(ends[0]);
                long to = Math.min(Long.parseLong(ends[ends.length - 1]), from + 999);
                for (long id = from; id <= to; id++) {
                    rack.find(new SheetId(id)).ifPresent(chosen::add);
                }
            }
        }
        return chosen.isEmpty() ? rack.list(RackFilter.inRack(), 0, 1000) : chosen;
    }

    private Div section(String title, String text) {
        Paragraph words = new Paragraph(figures.text(text));
        words.addClassName("pw-soft");
        PageSection section = new PageSection(figures.text(title), words);
        return section;
    }
}
