package puzzleworkshop.pattern;

import puzzleworkshop.geometry.path.CurvePath;

/**
 * A piece with a shape of its own (a heart, a letter, a closed path from a file), placed whole among the others, which
 * give way to it.
 *
 * @param name what it shows, for lists and screen readers
 * @param outline closed, in millimetres from the top left corner of the puzzle
 */
public record PersonalShape(String name, CurvePath outline) {

    public PersonalShape {
        if (!outline.closed()) {
            throw new IllegalArgumentException("The outline of a shape must be closed: " + name);
        }
    }

    /** A shape as it was kept, to the last bit. */
    public static PersonalShape kept(String name, String outline) {
        return new PersonalShape(name, ShapeText.read(outline));
    }

    /** Its outline as text, to be kept; {@link #kept} gives exactly this shape again. */
    public String outlineText() {
        return ShapeText.of(outline);
    }
}
