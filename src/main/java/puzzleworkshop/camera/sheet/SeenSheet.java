package puzzleworkshop.camera.sheet;

import java.util.List;
import java.util.Set;
import puzzleworkshop.camera.model.View;

/**
 * A measuring sheet as a photo shows it: the camera's view of its plane, and how sure that is.
 *
 * @param sheet which one
 * @param view of the plane; for cards, the first card seen is the origin
 * @param cards where each card lies; for a sheet one, at the origin
 * @param codes markers that were used
 * @param residual root mean square distance between corners seen and computed, in pixels
 * @param doubt how a change of the view moves a measured point
 */
public record SeenSheet(
        MeasuringSheet sheet, View view, List<Card> cards, Set<Integer> codes, double residual, Doubt doubt) {

    /**
     * Where a part of the sheet lies on the plane.
     *
     * @param part from 0
     * @param x of its top left corner
     * @param angle turned by, radians, x towards y
     */
    public record Card(int part, double x, double y, double angle) {

        public double toX(double cardX, double cardY) {
            return x + Math.cos(angle) * cardX - Math.sin(angle) * cardY;
        }

        public double toY(double cardX, double cardY) {
            return y + Math.sin(angle) * cardX + Math.cos(angle) * cardY;
        }

        public double cardX(double planeX, double planeY) {
            return Math.cos(angle) * (planeX - x) + Math.sin(angle) * (planeY - y);
        }

        public double cardY(double planeX, double planeY) {
            return -Math.sin(angle) * (planeX - x) + Math.cos(angle) * (planeY - y);
        }
    }

    /** Standard deviation of a measured point, in mm, from the fit of the view alone. */
    @FunctionalInterface
    public interface Doubt {
        double at(double u, double v, double z);
    }
}
