package puzzleworkshop.camera.sheet;

/**
 * A marker found in a photo.
 *
 * @param code its number in the dictionary
 * @param corners in pixels, in the order of {@link Marker#corners()}
 */
public record SeenMarker(int code, double[] corners) {}
