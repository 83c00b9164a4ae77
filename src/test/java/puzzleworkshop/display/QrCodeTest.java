package puzzleworkshop.display;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.Result;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.openpdf.text.Document;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.PdfWriter;

@DisplayNameGeneration(ReplaceUnderscores.class)
class QrCodeTest {

    private static final String ADDRESS = "https://workshop.example/p/7KQ4-9ZTM-22AB-PUZZLE";

    /** Drawn on paper, rendered by PDFBox at 200 ppi, and read as a phone would. */
    @Test
    void a_code_on_paper_is_read_back() throws Exception {
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        Document document = new Document(new Rectangle(120, 120));
        PdfWriter writer = PdfWriter.getInstance(document, pdf);
        document.open();
        QrCode.of(ADDRESS, 0).draw(writer.getDirectContent(), 30, 30, 60, Color.BLACK);
        document.close();
        try (PDDocument paper = Loader.loadPDF(pdf.toByteArray())) {
            assertThat(read(new PDFRenderer(paper).renderImageWithDPI(0, 200))).isEqualTo(ADDRESS);
        }
    }

    private static String read(BufferedImage image) throws Exception {
        int width = image.getWidth();
        int[] pixels = image.getRGB(0, 0, width, image.getHeight(), null, 0, width);
        BinaryBitmap bitmap =
                new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(width, image.getHeight(), pixels)));
        try {
            Result result = new QRCodeReader().decode(bitmap);
            return result.getText();
        } catch (NotFoundException none) {
            throw new AssertionError("no code was found", none);
        }
    }

    @Test
    void a_text_longer_than_a_code_holds_is_refused() {
        assertThatThrownBy(() -> QrCode.of("x".repeat(3000), 4)).isInstanceOf(IllegalArgumentException.class);
    }
}
