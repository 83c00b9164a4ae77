package puzzleworkshop.pattern;

import puzzleworkshop.geometry.CurvePath;

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
}
