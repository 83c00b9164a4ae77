package puzzleworkshop.cutfiles.ui;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.cutfiles.Inspection;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/** A cut file as it lies, with everything found in it marked by the number it has in the list. */
class InspectionDrawing extends SvgBox {

    /** Beyond this a browser grows slow; the drawing is then thinned to what an eye can tell apart. */
    private static final int MOST_SEGMENTS = 40_000;

    private static final double FINEST_SHARE = 1.0 / 2000;

    InspectionDrawing() {
        super("pattern-inspection");
    }

    /** @param only the finding to mark, or all */
    void show(Inspection inspection, Optional<Inspection.Finding> only) {
        Bounds frame =
                inspection.file().unsure().stream().map(CurvePath::bounds).reduce(inspection.frame(), Bounds::and);
        double extent = Math.max(Math.max(frame.width(), frame.height()), 1);
        Bounds view = frame.grownBy(extent * 0.04);
        double stroke = extent / 500;
        Svg svg = Svg.of(
                view.minX(),
                view.minY(),
                view.width(),
                view.height(),
                inspection.file().name(),
                getTranslation(
                        "pattern.check.drawing",
                        inspection.file().lines().size(),
                        inspection.findings().size()));
        svg.raw("<g fill='none' stroke-linejoin='round' stroke-linecap='round'>");
        svg.raw("<path class='pattern-foreign' stroke-width='" + Svg.n(stroke) + "' d='"
                + data(inspection.file().lines(), extent) + "'/>");
        if (!inspection.file().unsure().isEmpty()) {
            svg.raw("<path class='pattern-not-sure' stroke-width='" + Svg.n(stroke) + "' stroke-dasharray='"
                    + Svg.n(extent / 120) + " " + Svg.n(extent / 160) + "' d='"
                    + data(inspection.file().unsure(), extent) + "'/>");
        }
        List<Inspection.Finding> findings = inspection.findings();
        for (int i = 0; i < findings.size(); i++) {
            Inspection.Finding finding = findings.get(i);
            if (only.isEmpty() || only.get() == finding) {
                mark(svg, finding, i + 1, extent);
            }
        }
        draw(svg.end());
    }

    private static void mark(Svg svg, Inspection.Finding finding, int number, double extent) {
        String kind = finding.trouble().isSerious() ? "bad" : "warn";
        svg.raw("<g class='pattern-mark' data-kind='" + kind + "'>");
        StringBuilder runs = new StringBuilder();
        finding.runs().forEach(run -> runs.append(thinned(run, extent)));
        if (!runs.isEmpty()) {
            svg.raw("<path class='pattern-mark-run' stroke-width='" + Svg.n(extent / 110) + "' d='" + runs + "'/>");
        }
        for (Point place : finding.places()) {
            svg.raw("<circle class='pattern-mark-place' stroke-width='" + Svg.n(extent / 350) + "' cx='"
                    + Svg.n(place.xMm()) + "' cy='" + Svg.n(place.yMm()) + "' r='" + Svg.n(extent / 75) + "'/>");
        }
        firstPlace(finding).ifPresent(place -> {
            double size = extent / 38;
            svg.raw("<circle class='pattern-mark-badge' cx='" + Svg.n(place.xMm()) + "' cy='"
                    + Svg.n(place.yMm() - size) + "' r='" + Svg.n(size * 0.62) + "'/>");
            svg.text(
                    place.xMm(),
                    place.yMm() - size * 0.68,
                    size * 0.9,
                    "middle",
                    Integer.toString(number),
                    "pattern-mark-number");
        });
        svg.end();
    }

    private static Optional<Point> firstPlace(Inspection.Finding finding) {
        if (!finding.places().isEmpty()) {
            return Optional.of(finding.places().getFirst());
        }
        return finding.runs().stream().findFirst().map(run -> {
            List<Point> points = run.flattened(0.1);
            return points.get(points.size() / 2);
        });
    }

    private static String data(List<CurvePath> lines, double extent) {
        boolean many = lines.stream().mapToInt(line -> line.segments().size()).sum() > MOST_SEGMENTS;
        StringBuilder data = new StringBuilder();
        lines.forEach(line -> data.append(many ? thinned(line, extent) : line.svgPathData()));
        return data.toString();
    }

    private static String thinned(CurvePath line, double extent) {
        double finest = extent * FINEST_SHARE;
        List<Point> points = line.flattened(finest);
        StringBuilder data = new StringBuilder("M")
                .append(Svg.n(points.getFirst().xMm()))
                .append(' ')
                .append(Svg.n(points.getFirst().yMm()));
        Point last = points.getFirst();
        for (int i = 1; i < points.size(); i++) {
            Point point = points.get(i);
            if (point.distanceTo(last) >= finest || i == points.size() - 1) {
                data.append('L').append(Svg.n(point.xMm())).append(' ').append(Svg.n(point.yMm()));
                last = point;
            }
        }
        return data.toString();
    }
}
