package puzzleworkshop.pattern;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.util.Comparator;
import java.util.List;
import puzzleworkshop.cutfiles.found.CurveRuns;
import puzzleworkshop.cutfiles.found.FoundLines;
import puzzleworkshop.cutfiles.reading.DrawnFile;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;

/** Personal shapes to place in a pattern: a heart of our own, a letter, or the largest closed line of a file. */
public final class PersonalShapes {

    private static final float LETTER_SIZE = 100;
    private static final double SAME_PLACE_MM = 0.005;

    private PersonalShapes() {}

    /** A heart, as wide as asked and nearly as tall, with its lowest point rounded so that it does not break off. */
    public static PersonalShape heart(Point middle, Length width) {
        return fitted("heart", unitHeart(), middle, width.mm(), Double.MAX_VALUE);
    }

    /** The same heart filling a size, for a whole puzzle. */
    static CurvePath heartOutline(double widthMm, double heightMm) {
        CurvePath heart = unitHeart();
        Bounds bounds = heart.bounds();
        AffineTransform place = AffineTransform.getScaleInstance(widthMm / bounds.width(), heightMm / bounds.height());
        place.translate(-bounds.minX(), -bounds.minY());
        return heart.transformed(place);
    }

    private static CurvePath unitHeart() {
        Point top = Point.of(0, -0.26);
        CurvePath half = new CurvePath(
                top,
                List.of(
                        new Segment.Cubic(Point.of(0.07, -0.40), Point.of(0.20, -0.47), Point.of(0.31, -0.45)),
                        new Segment.Cubic(Point.of(0.43, -0.42), Point.of(0.50, -0.30), Point.of(0.50, -0.17)),
                        new Segment.Cubic(Point.of(0.50, 0.07), Point.of(0.24, 0.24), Point.of(0.05, 0.44)),
                        new Segment.Cubic(Point.of(0.035, 0.455), Point.of(0.018, 0.46), Point.of(0, 0.46))),
                false);
        CurvePath other =
                half.transformed(AffineTransform.getScaleInstance(-1, 1)).reversed();
        List<Segment> around = new java.util.ArrayList<>(half.segments());
        around.addAll(other.segments());
        return new CurvePath(top, around, true);
    }

    /**
     * The outer line of a letter or figure in the machine's bold face without serifs; holes stay part of the piece.
     * The outline, not the letter, belongs to the pattern: another machine's face changes nothing made before.
     *
     * @throws Refused when the face has no such letter
     */
    public static PersonalShape letter(int codePoint, Point middle, Length height) {
        String text = Character.toString(codePoint);
        Font font = new Font(Font.SANS_SERIF, Font.BOLD, 1).deriveFont(LETTER_SIZE);
        if (!font.canDisplay(codePoint) || Character.isWhitespace(codePoint)) {
            throw new Refused("pattern.shape.no_letter", text);
        }
        GlyphVector glyphs = font.createGlyphVector(new FontRenderContext(null, true, true), text);
        CurveRuns lines = new CurveRuns(FoundLines.limit(text));
        lines.read(glyphs.getOutline().getPathIterator(null));
        return fitted(text, largest(text, lines.lines()), middle, Double.MAX_VALUE, height.mm());
    }

    /**
     * A name in single letters, each a piece of its own, side by side about a middle; letters that stand apart by this much
     * leave room for pieces between them.
     *
     * @throws Refused when the face lacks one of the letters
     */
    public static List<PersonalShape> name(String text, Point middle, Length height, Length apart) {
        List<PersonalShape> letters = new java.util.ArrayList<>();
        double at = 0;
        for (int codePoint : text.codePoints().toArray()) {
            if (Character.isWhitespace(codePoint)) {
                at += apart.mm();
                continue;
            }
            PersonalShape letter = letter(codePoint, Point.of(0, middle.yMm()), height);
            double width = letter.outline().bounds().width();
            double to = at + width / 2 - letter.outline().bounds().centre().xMm();
            letters.add(new PersonalShape(letter.name(), letter.outline().translated(to, 0)));
            at += width + apart.mm();
        }
        double half = (at - apart.mm()) / 2;
        return letters.stream()
                .map(letter -> new PersonalShape(letter.name(), letter.outline().translated(middle.xMm() - half, 0)))
                .toList();
    }

    /** The largest closed line of a file, as large as it will go within the given width and height. */
    public static PersonalShape imported(DrawnFile file, Point middle, Length width, Length height) {
        return fitted(file.name(), largest(file.name(), file.lines()), middle, width.mm(), height.mm());
    }

    /** The same shape elsewhere or in another size; the very same one where nothing changes. */
    public static PersonalShape placed(PersonalShape shape, Point middle, Length longerSide) {
        Bounds bounds = shape.outline().bounds();
        boolean there = bounds.centre().distanceTo(middle) < SAME_PLACE_MM
                && Math.abs(Math.max(bounds.width(), bounds.height()) - longerSide.mm()) < SAME_PLACE_MM;
        if (there) {
            return shape;
        }
        PersonalShape fitted = fitted(shape.name(), shape.outline(), middle, longerSide.mm(), longerSide.mm());
        return new PersonalShape(fitted.name(), fitted.outline(), shape.divided());
    }

    private static CurvePath largest(String name, List<CurvePath> lines) {
        return lines.stream()
                .filter(CurvePath::closed)
                .max(Comparator.comparingDouble(line -> Math.abs(line.signedAreaMm2())))
                .orElseThrow(() -> new Refused("pattern.shape.open", name));
    }

    private static PersonalShape fitted(String name, CurvePath outline, Point middle, double width, double height) {
        Bounds bounds = outline.bounds();
        double scale = Math.min(width / bounds.width(), height / bounds.height());
        AffineTransform place = AffineTransform.getTranslateInstance(middle.xMm(), middle.yMm());
        place.scale(scale, scale);
        place.translate(-bounds.centre().xMm(), -bounds.centre().yMm());
        return new PersonalShape(name, outline.transformed(place));
    }
}
