package puzzleworkshop.cutfiles.reading;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import puzzleworkshop.cutfiles.dxf.DxfDrawing;
import puzzleworkshop.cutfiles.found.FoundLines;
import puzzleworkshop.cutfiles.found.Remark;
import puzzleworkshop.cutfiles.svg.SvgDrawing;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;

/**
 * A cut file drawn elsewhere, read into real millimetres.
 *
 * @param name of the file
 * @param kind how it was read
 * @param lines every cut line in the file's order; SVG from the top left corner of its page, DXF from its origin with y
 *        turned down (so what stands above the origin has negative y)
 * @param unsure lines that may or may not be cut lines, because something about them is not interpreted
 * @param page stated size of the page, if the file states one
 * @param remarks what was left out, assumed or not interpreted, what matters most first
 */
public record DrawnFile(
        String name,
        Kind kind,
        List<CurvePath> lines,
        List<CurvePath> unsure,
        Optional<Size> page,
        List<Remark> remarks) {

    /** Files that can be read. */
    public enum Kind {
        SVG,
        DXF
    }

    public static final int MOST_BYTES = 30_000_000;

    /** Assumed where a file gives no unit: SVG's own rule (CSS: 96 px an inch), millimetres in DXF. */
    public static final double USUAL_PX_PER_INCH = 96;

    public DrawnFile {
        lines = List.copyOf(lines);
        unsure = List.copyOf(unsure);
        remarks = List.copyOf(remarks);
    }

    public static DrawnFile read(String name, byte[] bytes) {
        return read(name, bytes, USUAL_PX_PER_INCH);
    }

    /**
     * @param pxPerInch pixels an inch for SVG lengths without a real unit; older drawing programs used 90 or 72
     * @throws Refused when it is too large, no SVG or DXF, damaged, asks for endless work, or holds no line
     */
    public static DrawnFile read(String name, byte[] bytes, double pxPerInch) {
        if (bytes.length > MOST_BYTES) {
            throw new Refused("cutfiles.file.too_large", name, bytes.length / 1_000_000, MOST_BYTES / 1_000_000);
        }
        FoundLines found = new FoundLines(name, FoundLines.limit(name));
        Kind kind = Kind.DXF;
        Optional<Size> page = Optional.empty();
        if (isCompressed(bytes)) {
            kind = Kind.SVG;
            page = SvgDrawing.read(found, unpacked(name, bytes), pxPerInch);
        } else if (looksLikeXml(bytes)) {
            kind = Kind.SVG;
            page = SvgDrawing.read(found, new ByteArrayInputStream(bytes), pxPerInch);
        } else {
            DxfDrawing.read(found, bytes);
        }
        if (found.lines().isEmpty()) {
            throw found.remarks().isEmpty() || found.remarks().getFirst().kind() == Remark.Kind.ASSUMED
                    ? new Refused("cutfiles.file.no_lines", name)
                    : new Refused(
                            "cutfiles.file.no_sure_lines",
                            name,
                            found.remarks().getFirst().sentence());
        }
        return new DrawnFile(name, kind, found.lines(), found.unsure(), page, found.remarks());
    }

    public Bounds bounds() {
        return lines.stream().map(CurvePath::bounds).reduce(Bounds::and).orElseThrow();
    }

    /** Whether everything that could be a cut line was interpreted. */
    public boolean isSure() {
        return remarks.stream().noneMatch(remark -> remark.kind() == Remark.Kind.UNSURE);
    }

    private static boolean isCompressed(byte[] bytes) {
        return bytes.length > 2 && bytes[0] == 0x1F && bytes[1] == (byte) 0x8B;
    }

    /** A compressed SVG, no more of it than a plain one may have. */
    private static InputStream unpacked(String name, byte[] bytes) {
        try (GZIPInputStream packed = new GZIPInputStream(new ByteArrayInputStream(bytes))) {
            byte[] plain = packed.readNBytes(MOST_BYTES + 1);
            if (plain.length > MOST_BYTES) {
                throw new Refused("cutfiles.file.too_large", name, plain.length / 1_000_000, MOST_BYTES / 1_000_000);
            }
            return new ByteArrayInputStream(plain);
        } catch (IOException damaged) {
            throw new Refused("cutfiles.file.damaged", name);
        }
    }

    private static boolean looksLikeXml(byte[] bytes) {
        boolean sixteenBits = bytes.length > 1 && (bytes[0] & 0xFF) + (bytes[1] & 0xFF) == 0xFF + 0xFE;
        for (int i = 0; i < bytes.length; i++) {
            byte each = bytes[i];
            if (each == '<') {
                return true;
            }
            // a byte order mark and blanks may stand before it
            if (each > ' ' || each == 0 && !sixteenBits) {
                return false;
            }
        }
        return false;
    }
}
