package puzzleworkshop.camera.outline;

import java.util.List;
import puzzleworkshop.camera.rings.Traces;
import puzzleworkshop.measure.Sentence;

/**
 * Edges of many small things in one photo, as measured, neither straightened nor simplified; of pictures only roughly, with what
 * shadow they throw.
 *
 * @param rings clockwise as seen; x, y in turn, mm
 * @param faint of pictures: the same again, with what hardly stands out from what lies below; nearer to some, farther from others
 * @param leftOut why something is not among them
 * @param varied whether they show a picture: where it is as pale as paper (or as dark as a cloth) below it, an edge may be wrong
 * @param traces what says that more of a picture lies there than was found
 * @param top the photo as their tops are seen from above
 */
public record SeenEdges(
        List<double[]> rings,
        List<double[]> faint,
        List<Sentence> leftOut,
        boolean varied,
        Traces traces,
        TopView top) {

    public SeenEdges {
        rings = List.copyOf(rings);
        faint = List.copyOf(faint);
        leftOut = List.copyOf(leftOut);
    }
}
