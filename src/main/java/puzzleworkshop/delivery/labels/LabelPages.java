package puzzleworkshop.delivery.labels;

import java.util.List;
import java.util.function.Supplier;
import org.openpdf.text.Document;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.PdfTemplate;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;

/** Lays labels on sheets, from any free place on; what does not fit goes on to the next sheet. */
final class LabelPages {

    private LabelPages() {}

    /**
     * @param labels makes them, each of the size that the kind has; asked once the first sheet is begun, because drawing needs
     *     an open document
     * @param first place on the first sheet, from 0
     * @throws Refused when there is no such place
     */
    static void lay(
            Document document, PdfWriter writer, LabelKind kind, Supplier<List<PdfTemplate>> labels, int first) {
        if (first < 0 || first >= kind.places()) {
            throw new Refused("delivery.label.place", kind.places());
        }
        page(document, kind.page());
        List<PdfTemplate> made = labels.get();
        for (int i = 0; i < made.size(); i++) {
            int place = (first + i) % kind.places();
            if (i > 0 && place == 0) {
                page(document, kind.page());
            }
            float x = Points.of(kind.leftMm(place));
            float y = Points.of(kind.page().height().mm()
                    - kind.topMm(place)
                    - kind.label().height().mm());
            writer.getDirectContent().addTemplate(made.get(i), x, y);
        }
    }

    /** The next page, of this size and without margins. */
    static void page(Document document, Size size) {
        document.setPageSize(new Rectangle(
                Points.of(size.width().mm()), Points.of(size.height().mm())));
        document.setMargins(0, 0, 0, 0);
        if (document.isOpen()) {
            document.newPage();
        } else {
            document.open();
        }
    }
}
