package puzzleworkshop.delivery.labels;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.openpdf.text.Document;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.support.MetricHouse;
import puzzleworkshop.support.ReadPaper;

/**
 * The fields of form CN 22 of the Universal Postal Union, named and in the sequence as on the form that India Post publishes
 * (quantity and detailed description of contents, weight, value, HS tariff number and country of origin, totals,
 * declaration, date and signature). 'Sale of goods' among the categories and 'net' weight are from memory.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CustomsFormTest {

    @Test
    void all_fields_of_the_form_stand_on_it_with_their_values() {
        String text =
                text(form(List.of(new CustomsForm.Line("Jigsaw puzzle of wood", 2, 412.4, Money.of("49.90", "EUR")))));
        assertThat(text)
                .contains("CUSTOMS DECLARATION", "CN 22", "May be opened officially", "[X] Sale of goods", "[ ] Gift")
                .contains("Quantity and detailed description of contents", "2 × Jigsaw puzzle of wood")
                .contains("Net weight (kg)", "0.412", "Value and currency", "EUR 49.90")
                .contains("HS tariff number and country of origin of goods", "9503.00 · DE")
                .contains("Total weight (kg)", "0.656", "Total value")
                .contains("I, the undersigned", "signature");
    }

    @Test
    void eight_orders_of_equal_goods_are_one_line_with_their_sums() {
        CustomsForm.Line one = new CustomsForm.Line("Jigsaw puzzle of wood", 2, 412.4, Money.of("49.90", "EUR"));
        String text = text(form(Collections.nCopies(8, one)));
        assertThat(text)
                .contains("16 × Jigsaw puzzle of wood", "3.299", "399.20")
                .contains("Total value", "I, the undersigned", "signature")
                .doesNotContain("2 × Jigsaw");
    }

    @Test
    void several_kinds_are_set_smaller_and_never_cut_off() {
        List<CustomsForm.Line> kinds = new ArrayList<>();
        boolean refused = false;
        for (int i = 1; i <= 30 && !refused; i++) {
            kinds.add(new CustomsForm.Line("Jigsaw puzzle of wood, kind " + i, 1, 100, Money.of("10.00", "EUR")));
            try {
                String text = text(form(kinds));
                assertThat(text)
                        .contains("kind " + i + " ", "Total weight (kg)", "I, the undersigned", "signature: ____");
            } catch (Refused full) {
                assertThat(i).as("kinds that fit").isGreaterThan(4);
                assertThat(full.sentence().key()).isEqualTo("delivery.cn22.full");
                refused = true;
            }
        }
        assertThat(refused).as("thirty kinds cannot stand on 74 × 105 mm").isTrue();
    }

    /** Universal Postal Union, form CN 22: Gift, Documents, Sale of goods, Commercial sample, Returned goods, Other (from memory). */
    @Test
    void exactly_one_of_the_six_boxes_is_ticked_and_a_replacement_for_nothing_is_no_sale() {
        List<CustomsForm.Line> lines =
                List.of(new CustomsForm.Line("Jigsaw puzzle of wood", 1, 206, Money.of("24.95", "EUR")));
        for (GoodsCategory category : GoodsCategory.values()) {
            String text = text(form(category, lines));
            assertThat(text.split("\\[X]", -1)).as(category.name()).hasSize(2);
            assertThat(text.split("\\[ ]", -1)).as(category.name()).hasSize(6);
        }
        assertThat(text(form(GoodsCategory.REPLACEMENT, lines)))
                .contains("[X] Other: replacement, free of charge", "[ ] Sale of goods", "EUR 24.95");
        assertThat(text(form(GoodsCategory.GIFT, lines))).contains("[X] Gift", "[ ] Sale of goods", "[ ] Other");
    }

    private static CustomsForm form(List<CustomsForm.Line> lines) {
        return form(GoodsCategory.SALE_OF_GOODS, lines);
    }

    private static CustomsForm form(GoodsCategory category, List<CustomsForm.Line> lines) {
        return new CustomsForm(
                category,
                lines,
                "9503.00",
                "DE",
                655.6,
                lines.stream().map(CustomsForm.Line::value).reduce(Money::plus).orElseThrow(),
                LocalDate.of(2026, 12, 3),
                "Birch Yard");
    }

    private static String text(CustomsForm form) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Document document = new Document();
        PdfWriter writer = PdfWriter.getInstance(document, out);
        LabelPages.page(document, CustomsForm.SIZE);
        writer.getDirectContent().addTemplate(form.draw(writer, MetricHouse.figures()), 0, 0);
        document.close();
        return ReadPaper.text(out.toByteArray()).replaceAll("\\s+", " ");
    }
}
