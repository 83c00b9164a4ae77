package puzzleworkshop.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;

/** A PDF of ours read back with PDFBox, as another program would. */
public final class ReadPaper {

    /** A Polish, a Greek and a Bulgarian name: none can be written in Latin-1, and none is a real person. */
    public static final String MANY_LETTERS = "Łucja Żółć, Ξένια Ψαρού, Щърба Юлия";

    private ReadPaper() {}

    /** The words of a paper; fails unless every letter's shape is in the file itself. */
    public static String text(byte[] pdf) {
        try (PDDocument paper = Loader.loadPDF(pdf)) {
            for (PDPage page : paper.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    var font = page.getResources().getFont(name);
                    assertThat(font.isEmbedded())
                            .as("the font " + font.getName() + " is embedded")
                            .isTrue();
                }
            }
            return new PDFTextStripper().getText(paper);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
