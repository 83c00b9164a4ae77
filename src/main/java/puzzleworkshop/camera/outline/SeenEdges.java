package puzzleworkshop.camera.outline;

import java.util.List;
import puzzleworkshop.measure.Sentence;

/**
 * Edges of many small things in one photo, as measured, neither straightened nor simplified.
 *
 * @param rings clockwise as seen; x, y in turn, mm
 * @param inPhoto the same points in the photo that was measured in; u, v in turn, pixels
 * @param leftOut why something is not among them
 */
public record SeenEdges(List<double[]> rings, List<double[]> inPhoto, List<Sentence> leftOut) {

    public SeenEdges {
        rings = List.copyOf(rings);
        inPhoto = List.copyOf(inPhoto);
        leftOut = List.copyOf(leftOut);
    }
}
