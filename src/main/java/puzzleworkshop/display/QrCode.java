package puzzleworkshop.display;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.awt.Color;
import java.util.Map;
import org.openpdf.text.pdf.PdfContentByte;

/**
 * A QR code (ISO/IEC 18004) for screens and papers: error correction M, which reads with 15 % of it dirty. The standard asks
 * for a quiet zone of four modules; a drawing that lies on white paper with room around it may take some of it from there.
 */
public final class QrCode {

    private final String text;
    private final BitMatrix modules;

    private QrCode(String text, BitMatrix modules) {
        this.text = text;
        this.modules = modules;
    }

    /**
     * @param quiet modules of white on every side
     * @throws IllegalArgumentException when the text is longer than a code can hold
     */
    public static QrCode of(String text, int quiet) {
        try {
            return new QrCode(
                    text,
                    new QRCodeWriter()
                            .encode(
                                    text,
                                    BarcodeFormat.QR_CODE,
                                    0,
                                    0,
                                    Map.of(
                                            EncodeHintType.MARGIN,
                                            quiet,
                                            EncodeHintType.ERROR_CORRECTION,
                                            ErrorCorrectionLevel.M)));
        } catch (WriterException tooLong) {
            throw new IllegalArgumentException("No QR code holds " + text.length() + " letters", tooLong);
        }
    }

    /** On a page of paper, its lower left corner at x and y, in points. */
    public void draw(PdfContentByte page, float x, float y, float side, Color ink) {
        float module = side / modules.getWidth();
        page.setColorFill(ink);
        for (int row = 0; row < modules.getHeight(); row++) {
            for (int column = 0; column < modules.getWidth(); column++) {
                if (modules.get(column, row)) {
                    page.rectangle(x + column * module, y + side - (row + 1) * module, module, module);
                }
            }
        }
        page.fill();
    }

    /** As a drawing; the classes give the colours, which must be dark on light in both schemes. */
    public Svg drawing(String title, String paperClass, String inkClass) {
        StringBuilder squares = new StringBuilder();
        for (int y = 0; y < modules.getHeight(); y++) {
            for (int x = 0; x < modules.getWidth(); x++) {
                if (modules.get(x, y)) {
                    squares.append('M').append(x).append(' ').append(y).append("h1v1h-1z");
                }
            }
        }
        return Svg.of(0, 0, modules.getWidth(), modules.getHeight(), title, text)
                .rect(0, 0, modules.getWidth(), modules.getHeight(), paperClass)
                .path(squares.toString(), inkClass);
    }
}
