package puzzleworkshop.camera.traced;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import puzzleworkshop.camera.sheet.MeasuringSheet;
import puzzleworkshop.camera.sheet.SheetPaper;

/**
 * Photos with known truth, made in another way than {@link puzzleworkshop.camera.RenderedPhoto} and sharing no code with it: rays are
 * followed from the lens to the first surface, and from there to a point of the lamp and to a point of the sky, many for each pixel
 * (Cook, Porter and Carpenter, Distributed ray tracing, 1984). The lens has the division model (Fitzgibbon, Simultaneous linear
 * estimation of multiple view geometry and lens distortion, 2001), which Brown's terms can only come near to. The sheet is the
 * page that is printed, drawn by PDFBox. Then what a camera does: see {@link Development}.
 */
public final class TracedPhoto {

    private static final double PRINT_DOTS_PER_MM = 12;
    private static final int FEW = 3;
    private static final int SHADED = 12;
    private static final int MANY = 20;
    private static final Map<MeasuringSheet, float[]> PRINTS = new EnumMap<>(MeasuringSheet.class);

    private final TracedScene scene;
    private final float[] print;
    private final int printColumns;
    private final int printRows;
    private final List<Prism> prisms = new ArrayList<>();

    private TracedPhoto(TracedScene scene) {
        this.scene = scene;
        printColumns = (int) Math.round(scene.sheet.width() * PRINT_DOTS_PER_MM);
        printRows = (int) Math.round(scene.sheet.height() * PRINT_DOTS_PER_MM);
        print = print(scene.sheet);
        for (double[] outline : scene.outlines) {
            prisms.add(new Prism(outline, scene.thickness, scene.board));
        }
    }

    /** The photo as a file. */
    public static byte[] jpeg(TracedScene scene) {
        return Development.jpeg(scene, new TracedPhoto(scene).traced());
    }

    private static synchronized float[] print(MeasuringSheet sheet) {
        return PRINTS.computeIfAbsent(sheet, wanted -> {
            int columns = (int) Math.round(wanted.width() * PRINT_DOTS_PER_MM);
            int rows = (int) Math.round(wanted.height() * PRINT_DOTS_PER_MM);
            try (PDDocument document =
                    Loader.loadPDF(SheetPaper.pdf(wanted, "Sheet", List.of("100 mm", "Print at 100 %"), false))) {
                BufferedImage page = new PDFRenderer(document)
                        .renderImageWithDPI(0, (float) (PRINT_DOTS_PER_MM * 25.4), ImageType.GRAY);
                float[] white = new float[columns * rows];
                for (int i = 0; i < white.length; i++) {
                    int x = Math.min(page.getWidth() - 1, i % columns);
                    int y = Math.min(page.getHeight() - 1, i / columns);
                    white[i] = page.getRaster().getSample(x, y, 0) / 255f;
                }
                return white;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    /** Light of each pixel: red, green, blue in turn. */
    private float[] traced() {
        float[] light = new float[3 * scene.width * scene.height];
        IntStream.range(0, scene.height).parallel().forEach(row -> {
            SplittableRandom random = new SplittableRandom(scene.seed * 7919L + row);
            double[] sum = new double[3];
            double[] ray = new double[3];
            double[] colour = new double[3];
            for (int column = 0; column < scene.width; column++) {
                java.util.Arrays.fill(sum, 0);
                aim(column + 0.5, row + 0.5, ray);
                int samples = samples(ray);
                for (int i = 0; i < samples; i++) {
                    // anywhere on the pixel, moved by the blur of the lens
                    double u = column + (i + random.nextDouble()) / samples + scene.blur * random.nextGaussian();
                    double v = row + random.nextDouble() + scene.blur * random.nextGaussian();
                    aim(u, v, ray);
                    see(ray, colour, (i + random.nextDouble()) / samples, random);
                    for (int c = 0; c < 3; c++) {
                        sum[c] += colour[c] / samples;
                    }
                }
                double du = (column + 0.5 - scene.centreU) / scene.focal;
                double dv = (row + 0.5 - scene.centreV) / scene.focal;
                double cos = 1 / Math.sqrt(1 + du * du + dv * dv);
                double fall = 1 - scene.vignette * (1 - cos * cos * cos * cos);
                for (int c = 0; c < 3; c++) {
                    light[3 * (row * scene.width + column) + c] = (float) (sum[c] * fall);
                }
            }
        });
        return light;
    }

    /** Direction of the ray through a place of the photo. */
    private void aim(double u, double v, double[] ray) {
        double x = (u - scene.centreU) / scene.focal;
        double y = (v - scene.centreV) / scene.focal;
        double ideal = 1 / (1 + scene.lambda * (x * x + y * y));
        for (int i = 0; i < 3; i++) {
            ray[i] = x * ideal * scene.axes[0][i] + y * ideal * scene.axes[1][i] + scene.axes[2][i];
        }
    }

    /** More where edges are near, and where a shadow may fall. */
    private int samples(double[] ray) {
        double far = scene.eye[2] / -ray[2];
        double x = scene.eye[0] + far * ray[0];
        double y = scene.eye[1] + far * ray[1];
        double rim = Math.min(Math.min(x, y), Math.min(scene.sheet.width() - x, scene.sheet.height() - y));
        if (rim > -1 && rim < 20) {
            return MANY;
        }
        double up = scene.thickness / -ray[2];
        int samples = FEW;
        for (Prism prism : prisms) {
            if (prism.hasEdgeAt(x, y) || prism.hasEdgeAt(x - up * ray[0], y - up * ray[1])) {
                return MANY;
            }
            for (int i = 0; i < 8 && samples == FEW; i++) {
                double reach = (1 + i % 2) * scene.thickness;
                double dx = reach * Math.cos(i * Math.PI / 4);
                double dy = reach * Math.sin(i * Math.PI / 4);
                samples = prism.hasEdgeAt(x + dx, y + dy) ? SHADED : FEW;
            }
        }
        return samples;
    }

    /** @param share of a turn at which the sky is asked, so that all samples of a pixel see all of it */
    private void see(double[] ray, double[] colour, double share, SplittableRandom random) {
        double far = scene.eye[2] / -ray[2];
        double gx = scene.eye[0] + far * ray[0];
        double gy = scene.eye[1] + far * ray[1];
        double nearest = 2;
        Prism hit = null;
        for (Prism prism : prisms) {
            double up = prism.thickness / -ray[2];
            double tx = gx - up * ray[0];
            double ty = gy - up * ray[1];
            double met = prism.isUnder(tx, ty) ? 0 : prism.met(tx, ty, gx, gy);
            if (met < nearest) {
                nearest = met;
                hit = prism;
            }
        }
        if (hit == null) {
            ground(gx, gy, colour);
            shine(gx, gy, 0, 0, 0, 1, colour, share, random);
            return;
        }
        double up = hit.thickness / -ray[2];
        double x = gx - up * ray[0] * (1 - nearest);
        double y = gy - up * ray[1] * (1 - nearest);
        double z = hit.thickness * (1 - nearest);
        if (nearest == 0) {
            hit.finish.at(x, y, colour);
            shine(x, y, z, 0, 0, 1, colour, share, random);
        } else {
            hit.finish.side(x + y, z, colour);
            // a wall's own normal matters little under so wide a sky: it faces the camera, level
            double level = Math.hypot(ray[0], ray[1]);
            shine(x, y, z, -ray[0] / level, -ray[1] / level, 0, colour, share, random);
        }
    }

    private void ground(double x, double y, double[] colour) {
        if (x < 0 || y < 0 || x >= scene.sheet.width() || y >= scene.sheet.height()) {
            scene.table.at(x, y, colour);
            return;
        }
        int column = Math.min(printColumns - 1, (int) (x * PRINT_DOTS_PER_MM));
        int row = Math.min(printRows - 1, (int) (y * PRINT_DOTS_PER_MM));
        double white = print[row * printColumns + column];
        double fibre = 0.985 + 0.03 * Hash.smooth(x * 1.7, y * 1.7, 5);
        java.util.Arrays.fill(colour, (0.035 + white * (scene.paper - 0.035)) * fibre);
    }

    /** What the lamp and the sky send there, of which the surface throws back its colour. */
    private void shine(
            double x,
            double y,
            double z,
            double nx,
            double ny,
            double nz,
            double[] colour,
            double share,
            SplittableRandom random) {
        double turn = 2 * Math.PI * random.nextDouble();
        double out = scene.lampRadius * Math.sqrt(random.nextDouble());
        double lx = scene.lamp[0] + out * Math.cos(turn) - x;
        double ly = scene.lamp[1] + out * Math.sin(turn) - y;
        double lz = scene.lamp[2] - z;
        double far2 = lx * lx + ly * ly + lz * lz;
        double facing = Math.max(0, (lx * nx + ly * ny + lz * nz) / Math.sqrt(far2));
        double strength = facing * scene.lamp[2] * scene.lamp[2] / far2;
        double lamp = isHidden(x, y, z, lx / lz, ly / lz) ? 0 : strength * scene.lampShare;
        // a ray of the sky by the cosine law
        double aside = Math.sqrt(random.nextDouble());
        double azimuth = 2 * Math.PI * share;
        double rise = Math.sqrt(1 - aside * aside) + 1e-3;
        double sx = aside * Math.cos(azimuth) / rise;
        double sy = aside * Math.sin(azimuth) / rise;
        double sky = nz < 0.5 ? (sx * nx + sy * ny > 0 ? 0.75 : 0.25) : isHidden(x, y, z, sx, sy) ? 0.25 : 1;
        for (int c = 0; c < 3; c++) {
            colour[c] *= lamp * scene.lampColour[c] + sky * (1 - scene.lampShare) * scene.skyColour[c];
        }
    }

    /** Whether a wall stands in the way of light from a direction, told by its run for each mm up. */
    private boolean isHidden(double x, double y, double z, double runX, double runY) {
        for (Prism prism : prisms) {
            double up = prism.thickness - z;
            if (up > 1e-6 && prism.met(x + runX * 1e-4, y + runY * 1e-4, x + runX * up, y + runY * up) <= 1) {
                return true;
            }
        }
        return false;
    }
}
