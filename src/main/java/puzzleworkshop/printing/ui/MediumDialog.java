package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextField;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.printing.media.PrintMedia;
import puzzleworkshop.printing.media.PrintMedium;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;

/** One sticker sheet or roll: its measures and the supplies it uses up. */
class MediumDialog extends Dialog {

    private final transient Formatter figures;
    private final TextField name = new TextField(getTranslation("printing.medium.name"));
    private final Select<PrintMedium.Kind> kind = new Select<>();
    private final LengthField width;
    private final LengthField height;
    private final LengthField margin;
    private final LengthField gap;
    private final Select<SupplyItem> sticker;
    private final Select<SupplyItem> laminate;
    private final Checkbox usual = new Checkbox(getTranslation("printing.medium.usual"));

    MediumDialog(
            PrintMedia media, Supplies supplies, Formatter figures, Optional<PrintMedium> medium, Runnable changed) {
        this.figures = figures;
        setWidth("34rem");
        setHeaderTitle(medium.map(PrintMedium::name).orElse(getTranslation("printing.medium.new")));
        name.setValue(medium.map(PrintMedium::name).orElse(""));
        kind.setLabel(getTranslation("printing.medium.kind"));
        kind.setItems(PrintMedium.Kind.values());
        kind.setItemLabelGenerator(k -> getTranslation("printing.medium.kind." + k.name()));
        kind.setValue(medium.map(PrintMedium::kind).orElse(PrintMedium.Kind.SHEET));
        width = length(
                "printing.medium.width", medium.map(m -> m.size().width()).orElse(null));
        height = length(
                "printing.medium.height", medium.map(m -> m.size().height()).orElse(null));
        margin =
                length("printing.medium.margin", medium.map(PrintMedium::margin).orElse(Length.mm(3)));
        gap = length("printing.medium.gap", medium.map(PrintMedium::gap).orElse(Length.mm(4)));
        sticker = supply(
                "printing.medium.sticker", supplies, SupplyKind.STICKER_PAPER, medium.flatMap(PrintMedium::sticker));
        laminate = supply(
                "printing.medium.laminate", supplies, SupplyKind.LAMINATE, medium.flatMap(PrintMedium::laminate));
        usual.setValue(medium.map(PrintMedium::usual).orElse(false));
        Div body = new Div(name, kind, width, height, margin, gap, sticker, laminate, usual);
        body.addClassName("pw-stack");
        add(body);
        Button keep = new Button(getTranslation("printing.medium.keep"), event -> {
            if (measured()
                    && Feedback.unlessRefused(
                            figures,
                            Sentence.of("printing.medium.kept", name.getValue()),
                            () -> media.keep(entered(medium)))) {
                close();
                changed.run();
            }
        });
        keep.addThemeVariants(ButtonVariant.PRIMARY);
        medium.flatMap(PrintMedium::id).ifPresent(id -> {
            Button retire = new Button(getTranslation("printing.medium.retire"), event -> {
                media.retire(id);
                close();
                changed.run();
            });
            retire.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.ERROR);
            getFooter().add(retire);
        });
        getFooter().add(new Button(getTranslation("printing.cancel"), event -> close()), keep);
    }

    /** Marks what is no length above zero (the margin may be zero). */
    private boolean measured() {
        boolean all = true;
        for (LengthField field : new LengthField[] {width, height, margin, gap}) {
            Length value = field.getValue();
            boolean good = value != null && (value.isPositive() || field == margin && value.mm() == 0);
            field.setInvalid(!good);
            field.setErrorMessage(good ? "" : getTranslation("printing.medium.number-missing"));
            all &= good;
        }
        return all;
    }

    private PrintMedium entered(Optional<PrintMedium> before) {
        return new PrintMedium(
                before.flatMap(PrintMedium::id),
                name.getValue().strip(),
                kind.getValue(),
                new Size(width.getValue(), height.getValue()),
                margin.getValue(),
                gap.getValue(),
                chosen(sticker),
                chosen(laminate),
                usual.getValue());
    }

    private static Optional<SupplyId> chosen(Select<SupplyItem> select) {
        return Optional.ofNullable(select.getValue()).flatMap(SupplyItem::id);
    }

    private LengthField length(String key, Length value) {
        LengthField field = new LengthField(getTranslation(key), figures.units());
        if (value != null) {
            field.setValue(value);
        }
        return field;
    }

    private Select<SupplyItem> supply(String key, Supplies supplies, SupplyKind of, Optional<SupplyId> now) {
        Select<SupplyItem> select = new Select<>();
        select.setLabel(getTranslation(key));
        select.setEmptySelectionAllowed(true);
        select.setEmptySelectionCaption(getTranslation("printing.medium.usual-supply"));
        select.setItemLabelGenerator(
                item -> item == null ? getTranslation("printing.medium.usual-supply") : item.name());
        List<SupplyItem> fitting =
                supplies.items().stream().filter(item -> item.kind() == of).toList();
        select.setItems(fitting);
        now.flatMap(supplies::find).filter(fitting::contains).ifPresent(select::setValue);
        return select;
    }
}
