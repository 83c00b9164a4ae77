package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.select.Select;
import java.util.Optional;
import java.util.Set;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Material;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.Workshop;

/** The blank somebody looks a sheet for: tells each change once it can be read. */
public class BlankForm extends Div {

    private final LengthField width;
    private final LengthField height;
    private final Checkbox finished = new Checkbox();
    private final Select<Material> material = new Select<>();
    private final Select<Grade> grade = new Select<>();
    private final LengthField thickness;
    private final Select<BlankWish.GrainWish> grain = new Select<>();
    private final transient Workshop workshop;
    private final transient Length mostBow;

    public BlankForm(Formatter figures, RackSettings settings, Workshop workshop, Runnable changed) {
        this.workshop = workshop;
        this.mostBow = settings.rules().mostBow();
        this.width = new LengthField(figures.text("sheets.steps.width"), figures.units());
        this.height = new LengthField(figures.text("sheets.steps.height"), figures.units());
        this.thickness = new LengthField(figures.text("sheets.thickness"), figures.units());
        addClassNames("pw-row", "sheets-wish");
        finished.setLabel(figures.text("boards.find.finished"));
        material.setLabel(figures.text("sheets.material"));
        material.setItems(settings.materials());
        material.setEmptySelectionAllowed(true);
        material.setItemLabelGenerator(m -> m == null ? figures.text("sheets.filter.anymaterial") : m.name());
        material.setEmptySelectionCaption(figures.text("sheets.filter.anymaterial"));
        grade.setLabel(figures.text("sheets.grade"));
        grade.setItems(Grade.values());
        grade.setEmptySelectionAllowed(true);
        grade.setItemLabelGenerator(
                g -> figures.text(g == null ? "sheets.filter.anygrade" : "sheets.grade." + g.name()));
        grade.setEmptySelectionCaption(figures.text("sheets.filter.anygrade"));
        grain.setLabel(figures.text("sheets.grain"));
        grain.setItems(BlankWish.GrainWish.values());
        grain.setItemLabelGenerator(g -> figures.text("sheets.grainwish." + g.name()));
        grain.setValue(BlankWish.GrainWish.ANY);
        thickness.setValue(workshop.tradeNumbers().boardThickness());
        width.addValueChangeListener(event -> changed.run());
        height.addValueChangeListener(event -> changed.run());
        finished.addValueChangeListener(event -> changed.run());
        material.addValueChangeListener(event -> changed.run());
        grade.addValueChangeListener(event -> changed.run());
        thickness.addValueChangeListener(event -> changed.run());
        grain.addValueChangeListener(event -> changed.run());
        add(width, height, finished, material, grade, thickness, grain);
    }

    public void show(BlankWish wish) {
        finished.setValue(false);
        width.setValue(wish.size().width());
        height.setValue(wish.size().height());
        thickness.setValue(wish.thickness());
        grain.setValue(wish.grain());
        material.setValue(material.getListDataView()
                .getItems()
                .filter(m -> wish.materials().size() == 1 && wish.materials().contains(m.id()))
                .findFirst()
                .orElse(null));
        grade.setValue(wish.grades().size() == 1 ? wish.grades().iterator().next() : null);
    }

    public Optional<BlankWish> wish() {
        Length w = width.getValue();
        Length h = height.getValue();
        Length t = thickness.getValue();
        if (w == null || h == null || t == null || !w.isPositive() || !h.isPositive() || !t.isPositive()) {
            return Optional.empty();
        }
        Size size = finished.getValue() ? workshop.tradeNumbers().blankFor(new Size(w, h)) : new Size(w, h);
        return Optional.of(new BlankWish(
                size,
                material.getValue() == null
                        ? Set.of()
                        : Set.of(material.getValue().id()),
                grade.getValue() == null ? Set.of() : Set.of(grade.getValue()),
                t,
                mostBow,
                grain.getValue()));
    }
}
