package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextField;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardContamination;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.BoardLimits;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;
import puzzleworkshop.sheets.board.Material;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.Workshop;

/** What is true of a board besides its shape, to type or change. What is typed stays for the next board. */
public class FactsForm extends Div {

    private final transient Formatter figures;
    private final transient Workshop workshop;
    private final Select<Material> material = new Select<>();
    private final Select<Grade> grade = new Select<>();
    private final LengthField nominal;
    private final LengthField measured;
    private final LengthField bow;
    private final Select<BoardContamination> past = new Select<>();
    private final Select<Grain> grain = new Select<>();
    private final ComboBox<String> place = new ComboBox<>();
    private final AmountField cost;
    private final TextField note = new TextField();

    public FactsForm(Formatter figures, RackSettings settings, SheetRack rack, Workshop workshop) {
        this.figures = figures;
        this.workshop = workshop;
        this.nominal = new LengthField(figures.text("sheets.thickness"), figures.units());
        this.measured = new LengthField(figures.text("sheets.measured"), figures.units());
        this.bow = new LengthField(figures.text("sheets.bow"), figures.units());
        addClassName("sheets-facts");
        choices(settings);
        places(rack.places());
        cost = AmountField.money(figures.text("sheets.cost", workshop.currency().getSymbol()), workshop.currency());
        note.setLabel(figures.text("sheets.note"));
        nominal.setValue(workshop.tradeNumbers().boardThickness());
        bow.setValue(Length.ZERO);
        add(material, grade, nominal, place, past, grain, measured, bow, cost, note);
    }

    private void choices(RackSettings settings) {
        material.setLabel(figures.text("sheets.material"));
        List<Material> materials = settings.materials();
        material.setItems(materials);
        material.setItemLabelGenerator(Material::name);
        materials.stream()
                .findFirst()
                .ifPresent(m -> material.setValue(materials.stream()
                        .filter(x -> x.id().equals("birch-ply"))
                        .findFirst()
                        .orElse(m)));
        grade.setLabel(figures.text("sheets.grade"));
        grade.setItems(Grade.values());
        grade.setItemLabelGenerator(g -> figures.text("sheets.grade." + g.name()));
        grade.setValue(Grade.CRAFT);
        past.setLabel(figures.text("sheets.past"));
        past.setItems(BoardContamination.values());
        past.setItemLabelGenerator(p -> figures.text("sheets.past." + p.name()));
        past.setValue(BoardContamination.CLEAN);
        grain.setLabel(figures.text("sheets.grain"));
        grain.setItems(Grain.values());
        grain.setItemLabelGenerator(g -> figures.text("sheets.grain." + g.name()));
        grain.setValue(Grain.NONE);
    }

    private void places(List<String> known) {
        List<String> items = new ArrayList<>(known);
        place.setLabel(figures.text("sheets.place"));
        place.setItems(items);
        place.setAllowCustomValue(true);
        place.addCustomValueSetListener(event -> {
            items.add(event.getDetail());
            place.setItems(items);
            place.setValue(event.getDetail());
        });
    }

    public void show(BoardFacts facts, Money carried) {
        material.getListDataView()
                .getItems()
                .filter(m -> m.id().equals(facts.material()))
                .findFirst()
                .ifPresent(material::setValue);
        grade.setValue(facts.grade());
        nominal.setValue(facts.nominal());
        measured.setValue(facts.measured().orElse(null));
        bow.setValue(facts.bow());
        past.setValue(facts.past());
        grain.setValue(facts.grain());
        if (!facts.place().isEmpty()) {
            List<String> items =
                    new ArrayList<>(place.getListDataView().getItems().toList());
            if (!items.contains(facts.place())) {
                items.add(facts.place());
                place.setItems(items);
            }
            place.setValue(facts.place());
        }
        cost.setValue(carried.rounded().amount());
        note.setValue(facts.note());
    }

    /** @throws Refused naming the field that cannot be read, which is marked */
    public BoardFacts facts() {
        Sentence thickness = Sentence.of("sheets.thickness.range", BoardLimits.THINNEST, BoardLimits.THICKEST);
        mark(nominal, nominal.getValue() == null, thickness);
        mark(measured, measured.getValue() == null && !measured.typed().isBlank(), thickness);
        mark(
                bow,
                bow.getValue() == null && !bow.typed().isBlank(),
                Sentence.of("sheets.bow.range", Length.ZERO, BoardLimits.MOST_BOW));
        return new BoardFacts(
                material.getValue().id(),
                grade.getValue(),
                nominal.getValue(),
                Optional.ofNullable(measured.getValue()),
                bow.getValue() == null ? Length.ZERO : bow.getValue(),
                past.getValue(),
                grain.getValue(),
                place.getValue() == null ? "" : place.getValue(),
                note.getValue());
    }

    private void mark(LengthField field, boolean wrong, Sentence why) {
        field.setInvalid(wrong);
        field.setErrorMessage(wrong ? figures.say(why) : "");
        if (wrong) {
            throw new Refused(why);
        }
    }

    /** Whether what it carries in cost stands among the facts; whoever does not see it leaves it as it is. */
    public void withCost(boolean shown) {
        cost.setVisible(shown);
    }

    /** What one sheet carries is not what the next one does. */
    public void forgetCost() {
        cost.clear();
    }

    /**
     * Nothing where nothing was typed.
     *
     * @throws Refused when it cannot be read; the field is marked
     */
    public Money cost() {
        return cost.typed(workshop.currency()).orElse(Money.zero(workshop.currency()));
    }
}
