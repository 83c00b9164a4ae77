package puzzleworkshop.cutting.ui.settings;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.formlayout.FormLayout;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.ui.Fields;
import puzzleworkshop.measure.Length;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Material;

/** All boards that a machine has a setting for: kinds down, thicknesses across, each with how far it can be trusted. */
public class SettingsMatrix extends Div {

    private final transient Machine machine;
    private final transient Settings settings;
    private final transient BoardNames boards;
    private final transient Formatter figures;

    public SettingsMatrix(Machine machine, Settings settings, BoardNames boards, Formatter figures) {
        this.machine = machine;
        this.settings = settings;
        this.boards = boards;
        this.figures = figures;
        addClassName("pw-section");
        Button add = new Button(figures.text("cutting.settings.add"), event -> askForBoard());
        Div head = new Div(new H2(figures.text("cutting.settings.of", machine.name())), add);
        head.addClassName("cutting-section-head");
        add(head);
        List<CutSetting> all = settings.of(machine);
        if (all.isEmpty()) {
            Paragraph none = new Paragraph(figures.text("cutting.settings.none"));
            none.addClassName("pw-soft");
            add(none);
        } else {
            add(table(all));
        }
    }

    private Div table(List<CutSetting> all) {
        Map<String, Map<Double, CutSetting>> rows = new LinkedHashMap<>();
        TreeSet<Double> thicknesses = new TreeSet<>();
        for (CutSetting setting : all) {
            thicknesses.add(setting.board().thickness().mm());
            rows.computeIfAbsent(boards.family(setting.board()), name -> new LinkedHashMap<>())
                    .put(setting.board().thickness().mm(), setting);
        }
        NativeTable table = new NativeTable();
        table.addClassName("cutting-matrix");
        NativeTableRow top = table.getHead().addRow();
        top.add(headCell(figures.text("cutting.settings.board"), "col"));
        thicknesses.forEach(mm -> top.add(headCell(figures.length(Length.mm(mm)), "col")));
        rows.forEach((family, cells) -> {
            NativeTableRow row = table.getBody().addRow();
            row.add(headCell(family, "row"));
            thicknesses.forEach(mm -> row.add(cell(cells.get(mm), mm)));
        });
        Div scroll = new Div(table);
        scroll.addClassName("cutting-matrix-scroll");
        return scroll;
    }

    private static NativeTableHeaderCell headCell(String words, String scope) {
        NativeTableHeaderCell cell = new NativeTableHeaderCell(words);
        cell.getElement().setAttribute("scope", scope);
        return cell;
    }

    private NativeTableCell cell(CutSetting setting, double mm) {
        NativeTableCell cell = new NativeTableCell();
        if (setting == null) {
            cell.addClassName("cutting-matrix-empty");
            return cell;
        }
        Span thickness = new Span(figures.length(Length.mm(mm)));
        thickness.addClassName("cutting-cell-thickness");
        Span energy = new Span(figures.text("cutting.energy", setting.lineEnergy()));
        energy.addClassName("cutting-cell-energy");
        Span dialled = new Span(figures.text(
                "cutting.dialled",
                figures.number(setting.speed().toMmPerMinute(), 0),
                setting.parameters().power(),
                setting.passes()));
        dialled.addClassName("pw-small");
        Anchor link = new Anchor(
                "machines/settings/" + setting.id(),
                thickness,
                new StateMark(setting.state(), figures),
                energy,
                dialled);
        link.addClassName("cutting-cell");
        cell.add(link);
        return cell;
    }

    private void askForBoard() {
        ComboBox<Material> material = new ComboBox<>(figures.text("cutting.settings.material"));
        material.setItems(boards.materials());
        material.setItemLabelGenerator(Material::name);
        Select<Grade> grade = new Select<>();
        grade.setLabel(figures.text("cutting.settings.grade"));
        grade.setItems(Grade.values());
        grade.setItemLabelGenerator(value -> boards.grade(value.name()));
        grade.setValue(Grade.CRAFT);
        LengthField thickness = new LengthField(figures.text("cutting.settings.thickness"), figures.units());
        thickness.setValue(Length.mm(3));
        Dialog dialog = new Dialog(figures.text("cutting.settings.add"));
        FormLayout form = Fields.form(material, grade, thickness);
        Button add = new Button(figures.text("cutting.settings.add.do"), event -> {
            Length typed = thickness.getValue();
            boolean fits = typed != null && typed.isPositive() && typed.mm() <= 50;
            thickness.setInvalid(!fits);
            thickness.setErrorMessage(figures.text("cutting.settings.thickness.range", Length.mm(50)));
            material.setInvalid(material.getValue() == null);
            material.setErrorMessage(figures.text("cutting.settings.material.missing"));
            if (fits && material.getValue() != null) {
                CutSetting added = settings.add(
                        machine,
                        new BoardKind(material.getValue().id(), grade.getValue().name(), typed));
                dialog.close();
                getUI().ifPresent(ui -> ui.navigate(SettingView.class, added.id()));
            }
        });
        add.addThemeVariants(ButtonVariant.PRIMARY);
        dialog.add(form);
        dialog.getFooter().add(new Button(figures.text("cutting.cancel"), event -> dialog.close()), add);
        dialog.open();
    }
}
