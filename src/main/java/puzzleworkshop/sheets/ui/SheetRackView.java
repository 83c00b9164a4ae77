package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.value.ValueChangeMode;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.PageTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.EmptyState;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.board.Material;
import puzzleworkshop.sheets.board.RackSettings;

/** The rack as drawings to one scale, with what to look for above it; more are fetched as they are asked for. */
@Route("sheets")
@PageTitle("Sheets")
@Menu(title = "sheets.title", order = 40)
@PermitAll
@StyleSheet("context://sheets.css")
public class SheetRackView extends Div {

    private static final int PORTION = 36;
    private static final double LEAST_WIDEST = 400;

    private final transient SheetRack rack;
    private final transient Formatter figures;
    private final transient RackLabels words;
    private final TextField text = new TextField();
    private final Select<Material> material = new Select<>();
    private final Select<Double> thickness = new Select<>();
    private final Select<SheetState> state = new Select<>();
    private final LengthField fitsWidth;
    private final LengthField fitsHeight;
    private final Span counted = new Span();
    private final Div cards = new Div();
    private final Div foot = new Div();
    private int shown;
    private double scale;

    public SheetRackView(SheetRack rack, RackSettings settings, Formatter figures, RackLabels words) {
        this.rack = rack;
        this.figures = figures;
        this.words = words;
        this.fitsWidth = new LengthField(figures.text("sheets.filter.width"), figures.units());
        this.fitsHeight = new LengthField(figures.text("sheets.filter.height"), figures.units());
        addClassName("pw-page");
        cards.addClassName("sheets-cards");
        counted.addClassName("pw-soft");
        Anchor enter = new Anchor("sheets/enter", figures.text("sheets.enter.open"));
        enter.addClassNames("sheets-main-link", "pw-push");
        PageHead head = new PageHead(figures.text("sheets.title"), counted, enter);
        add(head, words.doors(""), filters(settings), cards, foot);
        fill();
    }

    private Div filters(RackSettings settings) {
        text.setPlaceholder(figures.text("sheets.filter.text"));
        text.setAriaLabel(figures.text("sheets.filter.text"));
        text.setClearButtonVisible(true);
        text.setValueChangeMode(ValueChangeMode.LAZY);
        material.setItems(settings.materials());
        material.setEmptySelectionAllowed(true);
        material.setEmptySelectionCaption(figures.text("sheets.filter.anymaterial"));
        material.setItemLabelGenerator(m -> m == null ? figures.text("sheets.filter.anymaterial") : m.name());
        material.setAriaLabel(figures.text("sheets.material"));
        thickness.setItems(rack.thicknesses());
        thickness.setEmptySelectionAllowed(true);
        thickness.setEmptySelectionCaption(figures.text("sheets.filter.anythickness"));
        thickness.setItemLabelGenerator(
                mm -> mm == null ? figures.text("sheets.filter.anythickness") : figures.length(Length.mm(mm)));
        thickness.setAriaLabel(figures.text("sheets.thickness"));
        state.setItems(SheetState.FREE, SheetState.RESERVED, SheetState.USED, SheetState.SCRAPPED);
        state.setEmptySelectionAllowed(true);
        state.setEmptySelectionCaption(figures.text("sheets.filter.inrack"));
        state.setItemLabelGenerator(s -> figures.text(s == null ? "sheets.filter.inrack" : "sheets.state." + s.name()));
        state.setAriaLabel(figures.text("sheets.filter.state"));
        text.addValueChangeListener(event -> fill());
        material.addValueChangeListener(event -> fill());
        thickness.addValueChangeListener(event -> fill());
        state.addValueChangeListener(event -> fill());
        fitsWidth.addValueChangeListener(event -> fill());
        fitsHeight.addValueChangeListener(event -> fill());
        Div row = new Div(text, material, thickness, state, fitsWidth, fitsHeight);
        row.addClassNames("pw-row", "sheets-filters");
        return row;
    }

    private RackFilter filter() {
        Optional<Size> fits = Optional.empty();
        Length w = fitsWidth.getValue();
        Length h = fitsHeight.getValue();
        if (w != null && h != null && w.isPositive() && h.isPositive()) {
            fits = Optional.of(new Size(w, h));
        }
        Set<SheetState> states = state.getValue() == null
                ? EnumSet.of(SheetState.FREE, SheetState.RESERVED)
                : EnumSet.of(state.getValue());
        return new RackFilter(
                text.getValue(),
                Optional.ofNullable(material.getValue()).map(Material::id),
                Optional.ofNullable(thickness.getValue()).map(Length::mm),
                fits,
                states);
    }

    private void fill() {
        cards.removeAll();
        shown = 0;
        scale = 0;
        int count = rack.count(filter());
        counted.setText(figures.text("sheets.counted", count));
        if (count == 0) {
            Anchor enter = new Anchor("sheets/enter", figures.text("sheets.enter.open"));
            EmptyState empty =
                    new EmptyState(figures.text("sheets.empty.title"), figures.text("sheets.empty.text"), enter);
            foot.removeAll();
            foot.add(empty);
        } else {
            more(count);
        }
    }

    private void more(int count) {
        List<Sheet> next = rack.list(filter(), shown, PORTION);
        if (scale == 0) {
            double widest = next.stream()
                    .mapToDouble(sheet -> sheet.outline().bounds().width().mm())
                    .max()
                    .orElse(1);
            scale = Math.max(LEAST_WIDEST, widest);
        }
        Function<String, String> materials = words.materialNames();
        next.forEach(sheet -> cards.add(new SheetCard(sheet, figures, words, materials, scale)));
        shown += next.size();
        foot.removeAll();
        if (shown < count && !next.isEmpty()) {
            Button more = new Button(figures.text("sheets.more", count - shown), event -> more(count));
            more.addThemeVariants(ButtonVariant.TERTIARY);
            foot.add(more);
        }
    }
}
