package puzzleworkshop.camera;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import puzzleworkshop.camera.sheet.MeasuringSheet;

/** What stands before the camera in a rendered photo; see {@link RenderedPhoto} for the model. Lengths in mm, light linear. */
public final class Scene {

    /** A flat thing of one thickness. Rings: the outer one, then holes; x, y in turn, in the sheet's coordinates. */
    public static final class Board {
        public final List<double[]> rings;
        public final double thickness;
        public double[] colour = {0.72, 0.55, 0.34};
        public double[] wall = {0.45, 0.32, 0.18};
        public double grain = 0.08;
        public double grainAngle;
        /** What its top shows instead of wood; null: wood. */
        public Face face;

        public int seed = 1;
        DistanceField field;

        public Board(List<double[]> rings, double thickness) {
            this.rings = rings;
            this.thickness = thickness;
        }
    }

    /** Light that a printed top throws back at a place, red, green, blue (linear). */
    @FunctionalInterface
    public interface Face {
        double[] at(double x, double y);
    }

    /** Where a lamp is mirrored in the paper: a bright spot that fades over its radius. */
    public record Mirrored(double x, double y, double radius) {}

    /** A loose card on the table. */
    public record LaidCard(int part, double x, double y, double angle) {}

    public MeasuringSheet sheet = MeasuringSheet.A4;
    public final List<LaidCard> cards = new ArrayList<>();
    public final List<Board> boards = new ArrayList<>();
    public double[] table = {0.16, 0.09, 0.05};
    public double tableGrain = 0.25;
    public double paper = 0.86;

    public int width = 4000;
    public int height = 3000;
    public double focal = 3100;
    public double centreU = 2000;
    public double centreV = 1500;
    public double k1;
    public double k2;
    public double p1;
    public double p2;
    public double[] eye = {105, 148, -400};
    public double[] looksAt = {105, 148, 0};
    /** Turn of the camera about its own axis, radians. */
    public double roll;

    public double[] light = {300, -200, -900};
    public double ambient = 0.45;
    public double penumbra = 0.12;
    public double[] ambientColour = {0.95, 1.0, 1.06};
    public double[] lightColour = {1.03, 1.0, 0.95};
    public double exposure = 1;
    public double blur = 0.7;
    public double noise = 0.008;
    public double vignette = 0.25;
    public float jpeg = 0.9f;
    public final List<Mirrored> mirrored = new ArrayList<>();
    /** Paper that does not lie flat: its print is pushed to and fro by so much, mm. */
    public double crumpled;
    /** How much of the paper was cut off all round, mm. */
    public double trimmed;

    public long seed = 1;

    /** Rotation from sheet to camera, rows. */
    double[] turn() {
        double[] z = {looksAt[0] - eye[0], looksAt[1] - eye[1], looksAt[2] - eye[2]};
        unit(z);
        double[] right = Math.abs(z[2]) > 0.999999 ? new double[] {1, 0, 0} : new double[] {-z[1] * 0 + 1, 0, 0};
        // x axis of the camera: the sheet's x axis less its part along the viewing direction
        double along = right[0] * z[0] + right[1] * z[1] + right[2] * z[2];
        double[] x = {right[0] - along * z[0], right[1] - along * z[1], right[2] - along * z[2]};
        unit(x);
        double[] y = {z[1] * x[2] - z[2] * x[1], z[2] * x[0] - z[0] * x[2], z[0] * x[1] - z[1] * x[0]};
        double c = Math.cos(roll);
        double s = Math.sin(roll);
        return new double[] {
            c * x[0] + s * y[0],
            c * x[1] + s * y[1],
            c * x[2] + s * y[2],
            -s * x[0] + c * y[0],
            -s * x[1] + c * y[1],
            -s * x[2] + c * y[2],
            z[0],
            z[1],
            z[2]
        };
    }

    private static void unit(double[] v) {
        double n = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
        for (int i = 0; i < 3; i++) {
            v[i] /= n;
        }
    }

    /** Sets the camera so that a rectangle of the plane fills the photo, seen from a slant in a direction. */
    public void frame(double x, double y, double w, double h, double slantDegrees, double azimuth, double fill) {
        double across = Math.max(w / (width * fill), h / (height * fill)) * focal;
        double slant = Math.toRadians(slantDegrees);
        double far = across * (1 + 0.35 * Math.sin(slant));
        looksAt = new double[] {x + w / 2, y + h / 2, 0};
        eye = new double[] {
            x + w / 2 + far * Math.sin(slant) * Math.cos(azimuth),
            y + h / 2 + far * Math.sin(slant) * Math.sin(azimuth),
            -far * Math.cos(slant)
        };
    }

    Random random() {
        return new Random(seed);
    }

    /** A board on an A4 sheet, 3 megapixels, somewhat from the side. */
    public static Scene ofOneBoard(double[] outline, double thickness) {
        Scene scene = new Scene();
        scene.width = 2000;
        scene.height = 1500;
        scene.focal = 1600;
        scene.centreU = 1000;
        scene.centreV = 750;
        scene.k1 = 0.05;
        scene.k2 = -0.04;
        scene.frame(-43.5, 43.5, 297, 210, 18, 0.7, 0.9);
        scene.roll = Math.PI / 2;
        scene.boards.add(new Board(List.of(outline), thickness));
        return scene;
    }
}
