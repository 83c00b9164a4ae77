package puzzleworkshop.cutfiles.writing;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/** Writes a plan as SVG: one user unit is one millimetre, width and height say so; curves stay curves. */
final class SvgCutFile {

    static final String INNER = "inner-lines";
    static final String OUTLINE = "outline";
    private static final double STROKE_MM = 0.1;

    private SvgCutFile() {}

    static String text(CutPlan plan, Optional<MachinePage> page) {
        Point corner = CutFile.corner(plan, page);
        String width = number(corner.xMm());
        String height = number(corner.yMm());
        StringBuilder text = new StringBuilder();
        text.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        text.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"")
                .append(width)
                .append("mm\" height=\"")
                .append(height)
                .append("mm\" viewBox=\"0 0 ")
                .append(width)
                .append(' ')
                .append(height)
                .append("\" overflow=\"visible\">\n");
        text.append("<title>").append(escape(CutFile.title(plan, page))).append("</title>\n");
        text.append("<desc>").append(escape(CutFile.statement(plan, page))).append("</desc>\n");
        boolean innerFirst = plan.sequence() == CutPlan.Sequence.INNER_FIRST;
        group(text, innerFirst ? INNER : OUTLINE, innerFirst ? plan.inner() : plan.outline());
        group(text, innerFirst ? OUTLINE : INNER, innerFirst ? plan.outline() : plan.inner());
        return text.append("</svg>\n").toString();
    }

    private static void group(StringBuilder text, String id, List<CurvePath> lines) {
        text.append("<g id=\"")
                .append(id)
                .append("\" fill=\"none\" stroke=\"#000000\" stroke-width=\"")
                .append(STROKE_MM)
                .append("\">\n");
        for (CurvePath line : lines) {
            text.append("<path d=\"").append(line.svgPathData()).append("\"/>\n");
        }
        text.append("</g>\n");
    }

    private static String number(double value) {
        return java.math.BigDecimal.valueOf(Math.round(value * 1000), 3)
                .stripTrailingZeros()
                .toPlainString();
    }

    static String escape(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
