package puzzleworkshop.pattern;

import puzzleworkshop.geometry.path.CurvePath;

/**
 * A piece with a shape of its own (a heart, a letter, a closed path from a file), placed whole among the others, which
 * give way to it.
 *
 * @param name what it shows, for lists and screen readers
 * @param outline closed, in millimetres from the top left corner of the puzzle
 * @param divided whether lines go on inside it: then its outline is a line that others end on from both sides, an edge of
 *     the picture for instance, and only where no point of the grid lies within is it a piece
 */
public record PersonalShape(String name, CurvePath outline, boolean divided) {

    private static final String DIVIDED = " divided";

    public PersonalShape {
        if (!outline.closed()) {
            throw new IllegalArgumentException("The outline of a shape must be closed: " + name);
        }
    }

    /** A piece of its own. */
    public PersonalShape(String name, CurvePath outline) {
        this(name, outline, false);
    }

    /** A shape as it was kept, to the last bit. */
    public static PersonalShape kept(String name, String outline) {
        return new PersonalShape(name, ShapeText.read(outline), outline.endsWith(DIVIDED));
    }

    /** Its outline as text, to be kept, with a word more where it is divided; {@link #kept} gives exactly this shape again. */
    public String outlineText() {
        return ShapeText.of(outline) + (divided ? DIVIDED : "");
    }

    /** As before there were divided ones where it is whole: what customers approved is known by a digest of this text. */
    @Override
    public String toString() {
        return "PersonalShape[name=" + name + ", outline=" + outline + (divided ? ", divided]" : "]");
    }
}
