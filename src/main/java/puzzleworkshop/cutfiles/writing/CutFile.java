package puzzleworkshop.cutfiles.writing;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import puzzleworkshop.geometry.Point;

/**
 * A cut file for the laser's program, ready to hand out.
 *
 * @param format which
 * @param bytes the file
 */
public record CutFile(Format format, byte[] bytes) {

    /** Chords of curves in DXF stay within this of the drawn line; stated in the file. */
    public static final double DXF_TOLERANCE_MM = 0.02;

    /** The kinds of file that can be had; all hold two named groups, inner lines and outline, in real millimetres. */
    public enum Format {
        SVG("svg", "image/svg+xml"),
        DXF("dxf", "image/vnd.dxf"),
        PDF("pdf", "application/pdf");

        private final String ending;
        private final String mediaType;

        Format(String ending, String mediaType) {
            this.ending = ending;
            this.mediaType = mediaType;
        }

        public String ending() {
            return ending;
        }

        public String mediaType() {
            return mediaType;
        }
    }

    /** Writes a plan. Coordinates start at the plan's origin (top left; bottom left in DXF and PDF, whose y runs up). */
    public static CutFile write(CutPlan plan, Format format) {
        return write(plan, format, Optional.empty());
    }

    /** Writes a plan for a machine: with the setting in words, and with the bed as its page where it lies on one. */
    public static CutFile write(CutPlan plan, Format format, MachinePage page) {
        return write(plan, format, Optional.of(page));
    }

    private static CutFile write(CutPlan plan, Format format, Optional<MachinePage> page) {
        return new CutFile(
                format,
                switch (format) {
                    case SVG -> SvgCutFile.text(plan, page).getBytes(StandardCharsets.UTF_8);
                    case DXF -> DxfCutFile.text(plan, page).getBytes(StandardCharsets.US_ASCII);
                    case PDF -> PdfCutFile.bytes(plan, page);
                });
    }

    /** What is cut, and with a machine's page how: for titles. */
    static String title(CutPlan plan, Optional<MachinePage> page) {
        return page.map(bed -> plan.title() + " - " + bed.setting()).orElse(plan.title());
    }

    /** The lower right corner of the page. */
    static Point corner(CutPlan plan, Optional<MachinePage> page) {
        return page.flatMap(MachinePage::bed)
                .map(bed -> new Point(bed.width().mm(), bed.height().mm()))
                .orElseGet(() -> new Point(plan.frame().maxX(), plan.frame().maxY()));
    }

    static String statement(CutPlan plan, Optional<MachinePage> page) {
        return page.map(of -> (of.bed().isPresent() ? "The page is the bed of the machine, seen from the front. " : "")
                                + "Setting: " + of.setting() + ". ")
                        .orElse("")
                + statement(plan);
    }

    /** Origin and frame in words, written into every file. */
    static String statement(CutPlan plan) {
        var frame = plan.frame();
        return "Millimetres. Origin at the top left corner, x to the right. Frame "
                + mm(frame.width()) + " x " + mm(frame.height()) + " mm, its top left corner at x " + mm(frame.minX())
                + ", y " + mm(frame.minY()) + " mm from the origin. "
                + (plan.sequence() == CutPlan.Sequence.INNER_FIRST
                        ? "Inner lines first, outline last."
                        : "Outline first, inner lines last.")
                + " Total length " + mm(plan.lengthMm()) + " mm.";
    }

    private static String mm(double value) {
        String text = Double.toString(Math.round(value * 1000) / 1000.0);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }
}
