package puzzleworkshop.artwork.reading;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import puzzleworkshop.measure.Refused;

/** What the first bytes say a file is; for everything we cannot print from, a sentence that says what to send instead. */
public final class FileSignature {

    private static final int PEEK = 1024;

    private FileSignature() {}

    public static PictureFormat of(RandomAccessFile in) throws IOException {
        byte[] head = new byte[(int) Math.min(PEEK, in.length())];
        in.seek(0);
        in.readFully(head);
        in.seek(0);
        String latin = new String(head, StandardCharsets.ISO_8859_1);
        if (latin.startsWith("\u00ff\u00d8\u00ff")) {
            return PictureFormat.JPEG;
        }
        if (latin.startsWith("\u0089PNG\r\n\u001a\n")) {
            return PictureFormat.PNG;
        }
        if (latin.startsWith("RIFF") && latin.startsWith("WEBP", 8)) {
            return PictureFormat.WEBP;
        }
        if (isTiff(latin)) {
            if (latin.startsWith("CR", 8)) {
                throw new Refused("artwork.refused.camera-raw");
            }
            return PictureFormat.TIFF;
        }
        // Readers of PDF allow some bytes before the mark (ISO 32000-1, annex H.3, note 13).
        if (latin.contains("%PDF-")) {
            return PictureFormat.PDF;
        }
        throw new Refused(refusal(latin, head));
    }

    private static boolean isTiff(String latin) {
        return latin.startsWith("II*\0")
                || latin.startsWith("MM\0*")
                || latin.startsWith("II+\0")
                || latin.startsWith("MM\0+");
    }

    private static String refusal(String latin, byte[] head) {
        if (latin.startsWith("ftyp", 4)) {
            String brand = latin.substring(8, Math.min(12, latin.length())).toLowerCase(Locale.ROOT);
            return switch (brand) {
                case "heic", "heix", "hevc", "heim", "heis", "mif1", "msf1" -> "artwork.refused.heic";
                case "avif", "avis" -> "artwork.refused.avif";
                case "crx " -> "artwork.refused.camera-raw";
                default -> "artwork.refused.film";
            };
        }
        if (latin.startsWith("GIF8")) {
            return "artwork.refused.gif";
        }
        if (latin.startsWith("8BPS") || latin.startsWith("%!PS")) {
            return "artwork.refused.working-file";
        }
        if (latin.startsWith("BM")
                || latin.startsWith("\u00ff\n")
                || latin.startsWith("JXL ", 4)
                || latin.startsWith("jP  ", 4)) {
            return "artwork.refused.other-picture";
        }
        if (latin.startsWith("FUJIFILM")
                || latin.startsWith("IIU\0")
                || latin.startsWith("IIRO")
                || latin.startsWith("\0MRM")) {
            return "artwork.refused.camera-raw";
        }
        if (latin.startsWith("PK\u0003\u0004") || latin.startsWith("\u00d0\u00cf\u0011\u00e0")) {
            return "artwork.refused.office-file";
        }
        if (latin.toLowerCase(Locale.ROOT).contains("<svg")) {
            return "artwork.refused.svg";
        }
        return isText(head) ? "artwork.refused.text" : "artwork.refused.no-picture";
    }

    private static boolean isText(byte[] head) {
        for (byte b : head) {
            boolean printable = b >= 0x20 || b == '\n' || b == '\r' || b == '\t' || b < 0;
            if (!printable) {
                return false;
            }
        }
        return true;
    }
}
