package puzzleworkshop.display.fields;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.HasLabel;
import com.vaadin.flow.component.HasValue;
import com.vaadin.flow.component.ItemLabelGenerator;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.datepicker.DatePicker;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.BigDecimalField;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import puzzleworkshop.measure.Length;

/**
 * What stands in the fields of a page, as text by the fields' names, and back into them. For drafts: what cannot be put
 * back (a choice that is no longer there, a number of another kind) is left as the page begins.
 */
public final class FormMemory {

    private FormMemory() {}

    public static Map<String, String> of(Component page) {
        Map<String, String> kept = new LinkedHashMap<>();
        eachField(page, new LinkedHashMap<>(), (name, field) -> {
            String text = text(field);
            if (text != null) {
                kept.put(name, text);
            }
        });
        return kept;
    }

    public static void into(Component page, Map<String, String> kept) {
        eachField(page, new LinkedHashMap<>(), (name, field) -> {
            String text = kept.get(name);
            if (text != null && !text.equals(text(field))) {
                try {
                    put(field, text);
                } catch (NumberFormatException | DateTimeException | IllegalStateException other) {
                    // Kept by an earlier program, or a field of another kind by now: it stays as the page begins.
                    return;
                }
            }
        });
    }

    private static void eachField(Component part, Map<String, Integer> seen, BiConsumer<String, Component> found) {
        if (part instanceof HasValue<?, ?>) {
            String name = part instanceof HasLabel labelled && labelled.getLabel() != null ? labelled.getLabel() : "";
            int which = seen.merge(name, 1, Integer::sum);
            if (!name.isEmpty()) {
                found.accept(which == 1 ? name : name + " " + which, part);
            }
            return;
        }
        part.getChildren().toList().forEach(child -> eachField(child, seen, found));
    }

    private static String text(Component field) {
        return switch (field) {
            case LengthField length ->
                length.getValue() == null
                        ? ""
                        : Double.toString(length.getValue().mm());
            case TextField typed -> typed.getValue();
            case TextArea typed -> typed.getValue();
            case BigDecimalField number ->
                number.getValue() == null ? "" : number.getValue().toPlainString();
            case IntegerField number ->
                number.getValue() == null ? "" : number.getValue().toString();
            case Checkbox box -> String.valueOf(box.getValue());
            case DatePicker day -> day.getValue() == null ? "" : day.getValue().toString();
            case Select<?> choice -> chosen(choice.getValue(), choice.getItemLabelGenerator());
            case ComboBox<?> choice -> chosen(choice.getValue(), choice.getItemLabelGenerator());
            default -> null;
        };
    }

    private static void put(Component field, String text) {
        switch (field) {
            case LengthField length -> length.setValue(text.isEmpty() ? null : Length.mm(Double.parseDouble(text)));
            case TextField typed -> typed.setValue(text);
            case TextArea typed -> typed.setValue(text);
            case BigDecimalField number -> number.setValue(text.isEmpty() ? null : new BigDecimal(text));
            case IntegerField number -> number.setValue(text.isEmpty() ? null : Integer.valueOf(text));
            case Checkbox box -> box.setValue(Boolean.valueOf(text));
            case DatePicker day -> day.setValue(text.isEmpty() ? null : LocalDate.parse(text));
            case Select<?> choice ->
                choose(choice.getListDataView().getItems(), choice.getItemLabelGenerator(), choice, text);
            case ComboBox<?> choice ->
                choose(choice.getListDataView().getItems(), choice.getItemLabelGenerator(), choice, text);
            default -> throw new IllegalStateException("no field that is kept: " + field);
        }
    }

    private static <T> String chosen(Object value, ItemLabelGenerator<T> label) {
        @SuppressWarnings("unchecked")
        T item = (T) value;
        return item == null ? "" : label.apply(item);
    }

    @SuppressWarnings("unchecked")
    private static <T> void choose(Stream<?> items, ItemLabelGenerator<T> label, HasValue<?, ?> field, String wanted) {
        HasValue<?, T> choice = (HasValue<?, T>) field;
        Optional<T> found = items.map(item -> (T) item)
                .filter(item -> label.apply(item).equals(wanted))
                .findFirst();
        if (found.isPresent()) {
            choice.setValue(found.get());
        } else if (choice.getValue() instanceof Integer) {
            // A number that is not among those proposed may be typed as well.
            choice.setValue((T) Integer.valueOf(wanted));
        }
    }
}
