package puzzleworkshop.cutfiles.svg;

import puzzleworkshop.cutfiles.found.FoundLines;
import puzzleworkshop.cutfiles.found.Remark;
import puzzleworkshop.cutfiles.svg.values.SvgUnits;
import puzzleworkshop.cutfiles.svg.values.SvgViewport;
import puzzleworkshop.cutfiles.svg.values.Unreadable;

/** The size of the page (SVG 2, 8.2 and 8.11): stated, from the view box, or unknown; what had to be assumed is said. */
final class SvgPage {

    private final SvgUnits units;
    private final FoundLines found;

    SvgPage(SvgUnits units, FoundLines found) {
        this.units = units;
        this.found = found;
    }

    SvgViewport of(SvgStyle style, double[] box, String ratio) {
        String widthText = style.get("width", "auto");
        String heightText = style.get("height", "auto");
        double width = px(widthText, style);
        double height = px(heightText, style);
        if (!SvgUnits.isReal(widthText) && !SvgUnits.isReal(heightText)) {
            boolean some = width > 0 || height > 0;
            found.remark(
                    Remark.Kind.ASSUMED,
                    some ? "cutfiles.file.no_real_size" : "cutfiles.file.no_size",
                    units.pxPerInch());
        }
        if (width == 0 || height == 0) {
            // nothing shows then, say browsers; drawing programs write it by mistake
            found.remark(Remark.Kind.UNSURE, "cutfiles.svg.no_page");
        }
        if (box == null) {
            return new SvgViewport(
                    Math.max(0, width),
                    Math.max(0, height),
                    new java.awt.geom.AffineTransform(),
                    width > 0 ? width : Double.NaN,
                    height > 0 ? height : Double.NaN);
        }
        if (width <= 0 && height <= 0) {
            width = box[2];
            height = box[3];
        } else if (width <= 0) {
            width = height * box[2] / box[3];
        } else if (height <= 0) {
            height = width * box[3] / box[2];
        }
        return SvgViewport.of(width, height, box, ratio);
    }

    /** -1 where it hangs on a window. */
    private double px(String text, SvgStyle style) {
        try {
            return text.equals("auto") ? -1 : units.px(text, Double.NaN, style.fontPx());
        } catch (Unreadable share) {
            return -1;
        }
    }
}
