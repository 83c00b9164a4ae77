package puzzleworkshop.papers;

import java.awt.Color;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.openpdf.text.Font;
import org.openpdf.text.pdf.BaseFont;

/** One embedded typeface with the letters of most European languages; it comes with the PDF library. */
final class PaperFonts {

    static final Color INK = new Color(0x23201C);
    static final Color SOFT = new Color(0x6B6359);
    static final Color ACCENT = new Color(0x0F5C57);
    static final Color BIRCH = new Color(0xE6D3B3);
    static final Color LINE = new Color(0xE4DCCF);

    private static final BaseFont BASE = load();

    private PaperFonts() {}

    static Font plain(float size) {
        return new Font(BASE, size, Font.NORMAL, INK);
    }

    static Font bold(float size) {
        return new Font(BASE, size, Font.BOLD, INK);
    }

    static Font soft(float size) {
        return new Font(BASE, size, Font.NORMAL, SOFT);
    }

    static Font accent(float size) {
        return new Font(BASE, size, Font.BOLD, ACCENT);
    }

    static BaseFont base() {
        return BASE;
    }

    private static BaseFont load() {
        String name = "/font-fallback/LiberationSans-Regular.ttf";
        try (InputStream in = BaseFont.class.getResourceAsStream(name)) {
            return BaseFont.createFont("LiberationSans.ttf", BaseFont.IDENTITY_H, BaseFont.EMBEDDED, true, in.readAllBytes(), null);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
