package puzzleworkshop.cutfiles.writing;

import java.nio.charset.StandardCharsets;

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
        return new CutFile(
                format,
                switch (format) {
                    case SVG -> SvgCutFile.text(plan).getBytes(StandardCharsets.UTF_8);
                    case DXF -> DxfCutFile.text(plan).getBytes(StandardCharsets.US_ASCII);
                    case PDF -> PdfCutFile.bytes(plan);
                });
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
