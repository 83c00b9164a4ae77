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
        GrayU8 grey = new GrayU8(photo.width(), photo.height());
        for (int i = 0; i < photo.rgb().length; i++) {
            int rgb = photo.rgb()[i];
            grey.data[i] = (byte) (((rgb >> 16 & 0xFF) * 77 + (rgb >> 8 & 0xFF) * 151 + (rgb & 0xFF) * 28) >> 8);
        }
        SquareHamming_to_FiducialDetector<GrayU8> detector =
                FactoryFiducial.squareHamming(CODES, new ConfigFiducialHammingDetector(), GrayU8.class);
        detector.detect(grey);
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
                corners[2 * c] = bounds.get((c + 2) % 4).x;
                corners[2 * c + 1] = bounds.get((c + 2) % 4).y;
            }
            if (seen.put(code, new SeenMarker(code, MarkerEdges.refined(photo, corners))) != null) {
                twice.add(code);
            }
        }
        twice.forEach(seen::remove);
        return List.copyOf(seen.values());
    }
}
