package puzzleworkshop.cutting.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.display.Svg;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.Speed;

/**
 * A small card of squares to be cut, one for each pair of a speed (downwards) and a power (to the right), with the
 * numbers engraved beside it. One card tells more than a single try where nothing is known of a board.
 *
 * @param speeds from slow to fast, at most 8
 * @param powers from high to low, at most 6
 * @param passes for every square
 */
public record TestCard(List<Speed> speeds, List<Percent> powers, int passes) {

    private static final double SQUARE = 8;
    private static final double PITCH = 12;
    private static final double LEFT = 20;
    private static final double TOP = 10;
    private static final double EDGE = 4;
    private static final double DIGITS = 3.2;

    /**
     * One square of the card.
     *
     * @param row of the speed, from 0
     * @param column of the power, from 0
     */
    public record Square(int row, int column, Speed speed, Percent power) {}

    public TestCard {
        speeds = List.copyOf(speeds);
        powers = List.copyOf(powers);
        if (speeds.isEmpty() || speeds.size() > 8 || powers.isEmpty() || powers.size() > 6) {
            throw new IllegalArgumentException("A card has 1 to 8 speeds and 1 to 6 powers");
        }
        if (passes < 1 || passes > CutParameters.MOST_PASSES) {
            throw new IllegalArgumentException("Between 1 and " + CutParameters.MOST_PASSES + " passes");
        }
    }

    /**
     * Around what is dialled in: five speeds from 0.6 times its own over itself to its own / 0.6, in whole 10 mm/min and never above the
     * machine's, and three powers from its own down.
     */
    public static TestCard around(CutSetting setting) {
        double middle = setting.speed().toMmPerMinute();
        double most = setting.machine().motion().maxCut().toMmPerMinute();
        List<Speed> speeds = IntStream.range(0, 5)
                .mapToDouble(i ->
                        Math.min(most, Math.max(10, Math.round(middle * Math.pow(1 / 0.36, i / 4.0) * 0.6 / 10) * 10)))
                .distinct()
                .mapToObj(Speed::mmPerMinute)
                .toList();
        int power = setting.parameters().power().hundredths().intValue();
        List<Percent> powers = IntStream.of(power, power * 85 / 100, power * 70 / 100)
                .map(p -> Math.max(1, p))
                .distinct()
                .mapToObj(Percent::of)
                .toList();
        return new TestCard(speeds, powers, setting.passes());
    }

    /** The whole card with its rim. */
    public Size size() {
        return Size.mm(LEFT + powers.size() * PITCH + EDGE, TOP + speeds.size() * PITCH + EDGE);
    }

    /** Row by row: cut in this order. */
    public List<Square> squares() {
        List<Square> squares = new ArrayList<>();
        for (int row = 0; row < speeds.size(); row++) {
            for (int column = 0; column < powers.size(); column++) {
                squares.add(new Square(row, column, speeds.get(row), powers.get(column)));
            }
        }
        return squares;
    }

    /** What is dialled in for one square. */
    public CutParameters parameters(Square square, Length gap) {
        return new CutParameters(square.speed(), square.power(), passes, true, gap);
    }

    /** The line of one square on the card. */
    public CurvePath path(Square square) {
        double x = LEFT + square.column() * PITCH;
        double y = TOP + square.row() * PITCH;
        return CurvePath.through(
                List.of(
                        Point.of(x, y),
                        Point.of(x + SQUARE, y),
                        Point.of(x + SQUARE, y + SQUARE),
                        Point.of(x, y + SQUARE)),
                true);
    }

    /** The numbers beside the squares: speeds in mm/min on the left, powers in % above, passes in the corner. */
    public List<CurvePath> labels() {
        List<CurvePath> labels = new ArrayList<>();
        for (int row = 0; row < speeds.size(); row++) {
            String text = Long.toString(Math.round(speeds.get(row).toMmPerMinute()));
            double x = LEFT - 3 - StrokeDigits.width(text, DIGITS);
            labels.addAll(StrokeDigits.write(text, x, TOP + row * PITCH + (SQUARE - DIGITS) / 2, DIGITS));
        }
        for (int column = 0; column < powers.size(); column++) {
            String text = Math.round(powers.get(column).hundredths().doubleValue()) + "%";
            double x = LEFT + column * PITCH + (SQUARE - StrokeDigits.width(text, DIGITS * 0.8)) / 2;
            labels.addAll(StrokeDigits.write(text, x, EDGE, DIGITS * 0.8));
        }
        labels.addAll(StrokeDigits.write(passes + "x", EDGE, EDGE, DIGITS * 0.8));
        return labels;
    }

    /**
     * The card as an SVG file in real millimetres: first the group {@code labels} to engrave, then one group for each
     * square with a colour of its own, so that a laser program can give each its speed and power; their titles say which.
     */
    public String svg() {
        Size size = size();
        StringBuilder svg = new StringBuilder(String.format(
                Locale.ROOT,
                "<svg xmlns='http://www.w3.org/2000/svg' width='%smm' height='%smm' viewBox='0 0 %s %s'>\n"
                        + "<g id='labels' fill='none' stroke='#000000' stroke-width='0.1'>",
                Svg.n(size.width().mm()),
                Svg.n(size.height().mm()),
                Svg.n(size.width().mm()),
                Svg.n(size.height().mm())));
        labels().forEach(path ->
                svg.append("<path d='").append(path.svgPathData()).append("'/>"));
        svg.append("</g>\n");
        List<Square> squares = squares();
        for (int i = 0; i < squares.size(); i++) {
            Square square = squares.get(i);
            long speed = Math.round(square.speed().toMmPerMinute());
            long power = Math.round(square.power().hundredths().doubleValue());
            svg.append(String.format(
                    Locale.ROOT,
                    "<g id='speed-%d-power-%d' fill='none' stroke='%s' stroke-width='0.1'>"
                            + "<title>%d mm/min, %d %%, passes: %d</title><path d='%s'/></g>\n",
                    speed,
                    power,
                    colour(i, squares.size()),
                    speed,
                    power,
                    passes,
                    path(square).svgPathData()));
        }
        return svg.append("</svg>\n").toString();
    }

    private static String colour(int index, int of) {
        return String.format(Locale.ROOT, "#%06x", java.awt.Color.HSBtoRGB((float) index / of, 0.9f, 0.75f) & 0xffffff);
    }
}
