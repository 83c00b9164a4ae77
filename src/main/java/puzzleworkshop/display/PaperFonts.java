package puzzleworkshop.display;

import java.awt.Color;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.openpdf.text.Font;
import org.openpdf.text.pdf.BaseFont;

/**
 * The letters and inks of everything the workshop prints: Liberation Sans (SIL Open Font License 1.1), upright and bold, every
 * Latin, Greek and Cyrillic letter, always embedded: a printing machine or a print shop has no fonts of ours, and a name
 * comes out as it was typed.
 */
public final class PaperFonts {

    public static final Color INK = new Color(0x23201C);
    public static final Color SOFT = new Color(0x6B6359);
    public static final Color ACCENT = new Color(0x0F5C57);
    public static final Color BIRCH = new Color(0xE6D3B3);
    public static final Color LINE = new Color(0xE4DCCF);

    private static final BaseFont UPRIGHT = load("LiberationSans-Regular.ttf");
    private static final BaseFont HEAVY = load("LiberationSans-Bold.ttf");

    private PaperFonts() {}

    /** @param size in points, as everywhere here */
    public static Font plain(float size) {
        return new Font(UPRIGHT, size, Font.NORMAL, INK);
    }

    public static Font bold(float size) {
        return new Font(HEAVY, size, Font.NORMAL, INK);
    }

    public static Font soft(float size) {
        return new Font(UPRIGHT, size, Font.NORMAL, SOFT);
    }

    public static Font softBold(float size) {
        return new Font(HEAVY, size, Font.NORMAL, SOFT);
    }

    public static Font accent(float size) {
        return new Font(HEAVY, size, Font.NORMAL, ACCENT);
    }

    /** The upright letters for text that is placed by hand. */
    public static BaseFont base() {
        return UPRIGHT;
    }

    private static BaseFont load(String name) {
        try (InputStream in = BaseFont.class.getResourceAsStream("/liberation/" + name)) {
            return BaseFont.createFont(name, BaseFont.IDENTITY_H, BaseFont.EMBEDDED, true, in.readAllBytes(), null);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
