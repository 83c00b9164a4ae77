package puzzleworkshop.cutfiles.reading;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;

/**
 * A cut file drawn elsewhere, read into real millimetres.
 *
 * @param name of the file
 * @param kind how it was read
 * @param lines every line in the file's order; SVG from the top left corner of its page, DXF from its origin with y
 *        turned down (so what stands above the origin has negative y)
 * @param page stated size of the page, if the file states one
 * @param remarks what could not be read or had to be assumed
 */
public record DrawnFile(String name, Kind kind, List<CurvePath> lines, Optional<Size> page, List<Sentence> remarks) {

    /** Files that can be read. */
    public enum Kind {
        SVG,
        DXF
    }

    public static final int MOST_BYTES = 30_000_000;
    public static final int MOST_LINES = 300_000;

    /** Assumed where a file gives no unit: SVG's own rule (CSS: 96 px an inch), millimetres in DXF. */
    public static final double USUAL_PX_PER_INCH = 96;

    public DrawnFile {
        lines = List.copyOf(lines);
        remarks = List.copyOf(remarks);
    }

    public static DrawnFile read(String name, byte[] bytes) {
        return read(name, bytes, USUAL_PX_PER_INCH);
    }

    /**
     * @param pxPerInch pixels an inch for SVG lengths without a real unit; older drawing programs used 90 or 72
     * @throws Refused when it is too large, no SVG or DXF, damaged, or holds no line
     */
    public static DrawnFile read(String name, byte[] bytes, double pxPerInch) {
        if (bytes.length > MOST_BYTES) {
            throw new Refused("pattern.file.too_large", name, bytes.length / 1_000_000, MOST_BYTES / 1_000_000);
        }
        DrawnFile file = looksLikeXml(bytes) ? SvgReading.read(name, bytes, pxPerInch) : DxfReading.read(name, bytes);
        if (file.lines().isEmpty()) {
            throw new Refused("pattern.file.no_lines", name);
        }
        return file;
    }

    public Bounds bounds() {
        return lines.stream().map(CurvePath::bounds).reduce(Bounds::and).orElseThrow();
    }

    private static boolean looksLikeXml(byte[] bytes) {
        for (byte each : bytes) {
            if (each == '<') {
                return true;
            }
            // a byte order mark and blanks may stand before it
            if (each > ' ' || each == 0) {
                return false;
            }
        }
        return false;
    }
}
