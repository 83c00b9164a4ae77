package puzzleworkshop.pattern.shapes;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.measure.Length;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PersonalShapes;

/**
 * Shapes of our own of which some are the same (both letters N of a name, two hearts): the second is made a little smaller,
 * the third smaller still, about its own middle, until none would go into another's place. By how much is more than the play
 * of the cut and less than an eye minds.
 */
public final class SizesApart {

    /** So many steps are tried before a shape is left as it is; the pattern then says that two are alike. */
    private static final int MOST_STEPS = 16;
    /** Smaller by twice this at the longer side, half of it on either side. */
    private static final double STEP = 1.25;

    private SizesApart() {}

    public static List<PersonalShape> of(List<PersonalShape> shapes, Length kerf) {
        List<PersonalShape> apart = new ArrayList<>();
        for (PersonalShape shape : shapes) {
            apart.add(unlike(shape, apart, kerf));
        }
        return apart;
    }

    private static PersonalShape unlike(PersonalShape shape, List<PersonalShape> before, Length kerf) {
        Bounds bounds = shape.outline().bounds();
        double longer = Math.max(bounds.width(), bounds.height());
        double step = 2 * STEP * AlikeShapes.toldApartMm(kerf);
        PersonalShape tried = shape;
        for (int i = 1; i <= MOST_STEPS; i++) {
            PersonalShape now = tried;
            if (before.stream().noneMatch(other -> AlikeShapes.alike(other, now, kerf))) {
                return now;
            }
            if (longer - i * step <= longer / 2) {
                return shape;
            }
            tried = PersonalShapes.placed(shape, bounds.centre(), Length.mm(longer - i * step));
        }
        return shape;
    }
}
