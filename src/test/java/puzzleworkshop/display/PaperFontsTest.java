package puzzleworkshop.display;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.openpdf.text.Document;
import org.openpdf.text.Font;
import org.openpdf.text.Paragraph;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.support.ReadPaper;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PaperFontsTest {

    @Test
    void names_in_latin_greek_and_cyrillic_are_read_back_as_they_were_written() throws IOException {
        for (Font font : new Font[] {PaperFonts.plain(10), PaperFonts.bold(10)}) {
            byte[] pdf = paper(ReadPaper.MANY_LETTERS, font);
            assertThat(ReadPaper.text(pdf)).contains(ReadPaper.MANY_LETTERS);
            try (PDDocument paper = Loader.loadPDF(pdf)) {
                assertThat(paper.getPage(0).getResources().getFontNames()).isNotEmpty();
            }
        }
    }

    /** A missing letter is drawn as the same empty box each time: two different letters must not look alike. */
    @Test
    void each_letter_has_a_shape_of_its_own() throws IOException {
        for (int letter : "ŁłŻżŐőŘřĞğĪīΞξΨψΩωЩщЮюЯяЂђЇїƠơẾế€₴".codePoints().toArray()) {
            assertThat(PaperFonts.base().charExists(letter))
                    .as("the letter " + Character.getName(letter))
                    .isTrue();
            assertThat(PaperFonts.bold(9).getBaseFont().charExists(letter))
                    .as("bold " + Character.getName(letter))
                    .isTrue();
        }
        assertThat(inked(paper("ЩЩЩЩ", PaperFonts.plain(40)))).isNotEqualTo(inked(paper("ΨΨΨΨ", PaperFonts.plain(40))));
    }

    private static long inked(byte[] pdf) throws IOException {
        try (PDDocument paper = Loader.loadPDF(pdf)) {
            var page = new PDFRenderer(paper).renderImageWithDPI(0, 72);
            return java.util.Arrays.stream(
                            page.getRGB(0, 0, page.getWidth(), page.getHeight(), null, 0, page.getWidth()))
                    .filter(pixel -> (pixel & 0xFF) < 128)
                    .count();
        }
    }

    private static byte[] paper(String text, Font font) {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        Document document = new Document();
        PdfWriter.getInstance(document, file);
        document.open();
        document.add(new Paragraph(text, font));
        document.close();
        return file.toByteArray();
    }
}
