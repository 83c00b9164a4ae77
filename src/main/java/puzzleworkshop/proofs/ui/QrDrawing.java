package puzzleworkshop.proofs.ui;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.Map;
import puzzleworkshop.display.Svg;

/** A QR code (ISO/IEC 18004) as a drawing: dark squares on white in both schemes, with the four modules of quiet zone. */
final class QrDrawing {

    private QrDrawing() {}

    static Svg of(String text, String title) {
        BitMatrix bits;
        try {
            bits = new QRCodeWriter()
                    .encode(
                            text,
                            BarcodeFormat.QR_CODE,
                            0,
                            0,
                            Map.of(EncodeHintType.MARGIN, 4, EncodeHintType.ERROR_CORRECTION, ErrorCorrectionLevel.M));
        } catch (WriterException tooLong) {
            throw new IllegalArgumentException(tooLong);
        }
        StringBuilder squares = new StringBuilder();
        for (int y = 0; y < bits.getHeight(); y++) {
            for (int x = 0; x < bits.getWidth(); x++) {
                if (bits.get(x, y)) {
                    squares.append('M').append(x).append(' ').append(y).append("h1v1h-1z");
                }
            }
        }
        return Svg.of(0, 0, bits.getWidth(), bits.getHeight(), title, text)
                .rect(0, 0, bits.getWidth(), bits.getHeight(), "proofs-code-paper")
                .path(squares.toString(), "proofs-code-ink");
    }
}
