package puzzleworkshop.camera.sheet;

import boofcv.abst.fiducial.SquareHamming_to_FiducialDetector;
import boofcv.factory.fiducial.ConfigFiducialHammingDetector;
import boofcv.factory.fiducial.ConfigHammingMarker;
import boofcv.factory.fiducial.FactoryFiducial;
import boofcv.factory.fiducial.HammingDictionary;
import boofcv.struct.image.GrayU8;
import georegression.struct.shapes.Polygon2D_F64;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import puzzleworkshop.camera.Photo;

/**
 * Finds markers in a photo, with BoofCV. The codes are the open dictionary ARUCO_MIP_36h12 (S. Garrido-Jurado et al., Generation of
 * fiducial marker dictionaries using mixed integer linear programming, Pattern Recognition 51, 2016): six by six fields, any two
 * at least twelve fields apart, so that a marker half in glare is missed rather than read as another.
 */
public final class MarkerFinder {

    /** Fields along one side with the black frame around the code. */
    public static final int FIELDS = 8;

    private static final ConfigHammingMarker CODES =
            ConfigHammingMarker.loadDictionary(HammingDictionary.ARUCO_MIP_36h12);

    private static final long ENOUGH_PIXELS = 5_000_000;

    /** With fewer markers seen than this, or smaller ones (pixels), the photo is looked at again in all its pixels. */
    private static final int FEWEST_COARSE = 10;

    private static final double SMALLEST_COARSE = 60;

    private MarkerFinder() {}

    /** Whether a field of a marker is black; row and column from 0, the frame included. */
    public static boolean isBlack(int code, int row, int column) {
        if (row == 0 || column == 0 || row == FIELDS - 1 || column == FIELDS - 1) {
            return true;
        }
        return CODES.encoding.get(code).pattern.get((row - 1) * CODES.gridWidth + column - 1) == 0;
    }

    /** Markers of our sheets and cards; each number at most once. One that is seen twice cannot be trusted and is left out. */
    public static List<SeenMarker> find(Photo photo) {
        // where there are pixels enough, markers are looked for in every second one of them, and measured in all
        int step = (long) photo.width() * photo.height() > ENOUGH_PIXELS ? 2 : 1;
        List<SeenMarker> seen = found(photo, step);
        boolean enough = step == 1 || seen.size() >= FEWEST_COARSE && side(seen) >= SMALLEST_COARSE;
        return enough ? seen : found(photo, 1);
    }

    /** Median side in pixels of the photo. */
    private static double side(List<SeenMarker> seen) {
        double[] sides = seen.stream()
                .mapToDouble(marker -> Math.hypot(
                        marker.corners()[2] - marker.corners()[0], marker.corners()[3] - marker.corners()[1]))
                .sorted()
                .toArray();
        return sides[sides.length / 2];
    }

    /** Grey, each pixel the mean of step × step of the photo's. */
    private static GrayU8 grey(Photo photo, int step) {
        GrayU8 grey = new GrayU8(photo.width() / step, photo.height() / step);
        int[] rgb = photo.rgb();
        for (int y = 0; y < grey.height; y++) {
            for (int x = 0; x < grey.width; x++) {
                int sum = 0;
                for (int dy = 0; dy < step; dy++) {
                    int at = (y * step + dy) * photo.width() + x * step;
                    for (int dx = 0; dx < step; dx++) {
                        int pixel = rgb[at + dx];
                        sum += (pixel >> 16 & 0xFF) * 77 + (pixel >> 8 & 0xFF) * 151 + (pixel & 0xFF) * 28;
                    }
                }
                grey.data[y * grey.width + x] = (byte) (sum / (step * step) >> 8);
            }
        }
        return grey;
    }

    private static List<SeenMarker> found(Photo photo, int step) {
        SquareHamming_to_FiducialDetector<GrayU8> detector =
                FactoryFiducial.squareHamming(CODES, new ConfigFiducialHammingDetector(), GrayU8.class);
        detector.detect(grey(photo, step));
        Map<Integer, SeenMarker> seen = new HashMap<>();
        List<Integer> twice = new ArrayList<>();
        Polygon2D_F64 bounds = new Polygon2D_F64();
        for (int i = 0; i < detector.totalFound(); i++) {
            int code = (int) detector.getId(i);
            if (MeasuringSheet.of(code).isEmpty()) {
                continue;
            }
            detector.getBounds(i, bounds);
            double[] corners = new double[8];
            for (int c = 0; c < 4; c++) {
                // BoofCV begins with the corner at the lower right of the upright code
                corners[2 * c] = step * bounds.get((c + 2) % 4).x;
                corners[2 * c + 1] = step * bounds.get((c + 2) % 4).y;
            }
            if (seen.put(code, new SeenMarker(code, MarkerEdges.refined(photo, corners))) != null) {
                twice.add(code);
            }
        }
        twice.forEach(seen::remove);
        return List.copyOf(seen.values());
    }
}
