package puzzleworkshop.camera;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.camera.sheet.Marker;
import puzzleworkshop.camera.sheet.MarkerFinder;
import puzzleworkshop.camera.sheet.MeasuringSheet;

/**
 * Photos with known truth. The camera model, written here apart from the one in the program: a point (X, Y, Z) before the camera
 * is seen at x = X/Z, y = Y/Z; the lens moves it by Brown's and Conrady's terms (k₁, k₂, p₁, p₂ in the order of OpenCV's
 * documentation); u = f·x + cᵤ, v = f·y + cᵥ. Each pixel is followed back (fixed-point iteration) to the tops, walls and shadows of
 * the boards and to the sheet. Light: one lamp with the inverse-square law and the cosine of its angle, light from all around,
 * less of it beside walls; the lens falls off with the fourth power of the cosine in part; then blur, photon and reading noise,
 * sRGB, JPEG.
 */
public final class RenderedPhoto {

    private static final double FIELD = 0.1;

    private final Scene scene;
    private final double[] turn;
    private final float[] print;
    private int printColumns;
    private int printRows;

    private RenderedPhoto(Scene scene) {
        this.scene = scene;
        this.turn = scene.turn();
        this.print = scene.cards.isEmpty() ? printed(scene.sheet, 0) : null;
        for (Scene.Board board : scene.boards) {
            if (board.field == null) {
                board.field = new DistanceField(board.rings, Math.max(8, 3.2 * board.thickness));
            }
        }
    }

    public static byte[] jpeg(Scene scene) {
        BufferedImage image = new RenderedPhoto(scene).render();
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(scene.jpeg);
            writer.setOutput(new MemoryCacheImageOutputStream(out));
            writer.write(null, new IIOImage(image, null, null), param);
            ((MemoryCacheImageOutputStream) writer.getOutput()).close();
            writer.dispose();
            return out.toByteArray();
        } catch (IOException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    public static Photo photo(Scene scene) {
        return read(jpeg(scene));
    }

    public static Photo read(byte[] jpeg) {
        try {
            BufferedImage image = ImageIO.read(new ByteArrayInputStream(jpeg));
            int w = image.getWidth();
            int h = image.getHeight();
            int[] rgb = image.getRGB(0, 0, w, h, null, 0, w);
            for (int i = 0; i < rgb.length; i++) {
                rgb[i] &= 0xFFFFFF;
            }
            // what the camera says of its lens is read as the program reads it
            return new Photo(w, h, rgb, Photos.focal(jpeg, w, h));
        } catch (IOException unreadable) {
            throw new IllegalStateException(unreadable);
        }
    }

    /** How black the paper is printed, on a raster finer than the photo. */
    private float[] printed(MeasuringSheet sheet, int part) {
        printColumns = (int) Math.ceil(sheet.width() / FIELD) + 1;
        printRows = (int) Math.ceil(sheet.height() / FIELD) + 1;
        float[] ink = new float[printColumns * printRows];
        for (Marker marker : sheet.markers(part)) {
            double left = marker.x() - marker.side() / 2;
            double top = marker.y() - marker.side() / 2;
            double field = marker.side() / MarkerFinder.FIELDS;
            fill(ink, left, top, left + marker.side(), top + marker.side(), 1);
            for (int row = 1; row < MarkerFinder.FIELDS - 1; row++) {
                for (int column = 1; column < MarkerFinder.FIELDS - 1; column++) {
                    if (!MarkerFinder.isBlack(marker.code(), row, column)) {
                        fill(
                                ink,
                                left + column * field,
                                top + row * field,
                                left + (column + 1) * field,
                                top + (row + 1) * field,
                                0);
                    }
                }
            }
        }
        if (sheet.parts() == 1) {
            fill(ink, sheet.lineX(), sheet.lineY() - 0.1, sheet.lineX() + MeasuringSheet.LINE, sheet.lineY() + 0.1, 1);
            for (int i = 0; i < 60; i++) {
                // letters: short strokes
                double x = sheet.lineX() + 10 + i * 1.1;
                fill(ink, x, sheet.lineY() - 2.6, x + 0.3, sheet.lineY() - 1, 0.7f);
            }
        }
        return ink;
    }

    /** Points of the raster are covered by share, so an edge between two of them stands where it should. */
    private void fill(float[] ink, double x1, double y1, double x2, double y2, float value) {
        for (int r = (int) Math.floor(y1 / FIELD); r <= Math.ceil(y2 / FIELD); r++) {
            double down =
                    Math.clamp(Math.min((r + 0.5) * FIELD, y2) - Math.max((r - 0.5) * FIELD, y1), 0, FIELD) / FIELD;
            for (int c = (int) Math.floor(x1 / FIELD); c <= Math.ceil(x2 / FIELD); c++) {
                double over =
                        Math.clamp(Math.min((c + 0.5) * FIELD, x2) - Math.max((c - 0.5) * FIELD, x1), 0, FIELD) / FIELD;
                if (r >= 0 && c >= 0 && r < printRows && c < printColumns) {
                    int at = r * printColumns + c;
                    ink[at] += (float) ((value - ink[at]) * down * over);
                }
            }
        }
    }

    private double ink(float[] raster, double x, double y) {
        double c = x / FIELD;
        double r = y / FIELD;
        double cut = scene.trimmed / FIELD;
        if (c < cut || r < cut || c >= printColumns - 1 - cut || r >= printRows - 1 - cut) {
            return -1;
        }
        int i = (int) c;
        int j = (int) r;
        double fx = c - i;
        double fy = r - j;
        int at = j * printColumns + i;
        return (raster[at] * (1 - fx) + raster[at + 1] * fx) * (1 - fy)
                + (raster[at + printColumns] * (1 - fx) + raster[at + printColumns + 1] * fx) * fy;
    }

    private BufferedImage render() {
        int w = scene.width;
        int h = scene.height;
        float[][] planes = new float[3][w * h];
        float[][] cardInk = new float[scene.cards.size()][];
        for (int i = 0; i < cardInk.length; i++) {
            cardInk[i] = printed(MeasuringSheet.CARDS, scene.cards.get(i).part());
        }
        IntStream.range(0, h).parallel().forEach(v -> {
            double[] colour = new double[3];
            for (int u = 0; u < w; u++) {
                shade(u + 0.5, v + 0.5, colour, cardInk);
                for (int c = 0; c < 3; c++) {
                    planes[c][v * w + u] = (float) colour[c];
                }
            }
        });
        for (float[] plane : planes) {
            if (scene.blur > 0.2) {
                blur(plane, w, h, scene.blur);
            }
        }
        BufferedImage image = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
        IntStream.range(0, h).parallel().forEach(v -> {
            Random random = new Random(scene.seed * 1_000_003 + v);
            for (int u = 0; u < w; u++) {
                int rgb = 0;
                for (int c = 0; c < 3; c++) {
                    double light = planes[c][v * w + u] * scene.exposure;
                    light += random.nextGaussian() * scene.noise * Math.sqrt(0.05 + Math.max(0, light));
                    rgb = rgb << 8 | Math.clamp(Math.round(255 * encoded(light)), 0, 255);
                }
                image.setRGB(u, v, rgb);
            }
        });
        return image;
    }

    private static double encoded(double light) {
        double l = Math.clamp(light, 0, 1);
        return l <= 0.0031308 ? 12.92 * l : 1.055 * Math.pow(l, 1 / 2.4) - 0.055;
    }

    private void shade(double u, double v, double[] colour, float[][] cardInk) {
        double xd = (u - scene.centreU) / scene.focal;
        double yd = (v - scene.centreV) / scene.focal;
        double x = xd;
        double y = yd;
        for (int i = 0; i < 12; i++) {
            double r2 = x * x + y * y;
            double radial = 1 + scene.k1 * r2 + scene.k2 * r2 * r2;
            double dx = 2 * scene.p1 * x * y + scene.p2 * (r2 + 2 * x * x);
            double dy = scene.p1 * (r2 + 2 * y * y) + 2 * scene.p2 * x * y;
            x = (xd - dx) / radial;
            y = (yd - dy) / radial;
        }
        double rx = turn[0] * x + turn[3] * y + turn[6];
        double ry = turn[1] * x + turn[4] * y + turn[7];
        double rz = turn[2] * x + turn[5] * y + turn[8];
        double far = -scene.eye[2] / rz;
        double gx = scene.eye[0] + far * rx;
        double gy = scene.eye[1] + far * ry;
        double footprint = far / scene.focal;
        ground(gx, gy, footprint, colour, cardInk);
        for (Scene.Board board : scene.boards) {
            double up = board.thickness / -rz;
            // the point of the ray at the height of the top
            double tx = gx + up * rx;
            double ty = gy + up * ry;
            if (!board.field.near(gx, gy) && !board.field.near(tx, ty)) {
                continue;
            }
            double top = cover(board.field.at(tx, ty), footprint);
            double wall = top;
            double length = Math.hypot(gx - tx, gy - ty);
            int steps = (int) Math.ceil(length / 0.2);
            for (int i = 1; i <= steps; i++) {
                double s = (double) i / steps;
                wall = Math.max(wall, cover(board.field.at(tx + s * (gx - tx), ty + s * (gy - ty)), footprint));
            }
            if (wall <= 0) {
                continue;
            }
            double[] mixed = {0, 0, 0};
            double light = lit(tx, ty, -board.thickness, mixed, null);
            double[] face = face(board, tx, ty);
            for (int c = 0; c < 3; c++) {
                double faced = face[c] * mixed[c];
                double walled = board.wall[c] * mixed[c] * 0.75;
                colour[c] = colour[c] * (1 - wall) + walled * Math.max(0, wall - top) + faced * top;
            }
        }
        double cos2 = 1 / (1 + xd * xd + yd * yd);
        double fall = 1 - scene.vignette + scene.vignette * cos2 * cos2;
        for (int c = 0; c < 3; c++) {
            colour[c] *= fall;
        }
    }

    private static double cover(double distance, double footprint) {
        return Math.clamp(0.5 - distance / footprint, 0, 1);
    }

    private void ground(double x, double y, double footprint, double[] colour, float[][] cardInk) {
        double[] light = new double[3];
        lit(x, y, 0, light, scene.boards);
        double ink = -1;
        if (print != null) {
            double push = scene.crumpled * Math.sin(x / 17);
            ink = ink(print, x + scene.crumpled * Math.sin(y / 23), y + push);
        }
        for (int i = 0; i < cardInk.length && ink < 0; i++) {
            Scene.LaidCard card = scene.cards.get(i);
            double c = Math.cos(card.angle());
            double s = Math.sin(card.angle());
            double dx = x - card.x();
            double dy = y - card.y();
            ink = ink(cardInk[i], c * dx + s * dy, -s * dx + c * dy);
        }
        if (ink >= 0) {
            double lamp = 0;
            for (Scene.Mirrored spot : scene.mirrored) {
                double away = Math.hypot(x - spot.x(), y - spot.y()) / spot.radius();
                lamp += Math.exp(-away * away);
            }
            for (int c = 0; c < 3; c++) {
                colour[c] = light[c] * (scene.paper * (1 - ink) + 0.04 * ink) + lamp;
            }
            return;
        }
        double g = 1 + scene.tableGrain * (2 * noise(x * 0.02, y * 0.25, 77) - 1);
        for (int c = 0; c < 3; c++) {
            colour[c] = light[c] * scene.table[c] * g;
        }
    }

    /** Light that reaches a place, by channel. */
    private double lit(double x, double y, double z, double[] light, List<Scene.Board> shading) {
        double lx = scene.light[0] - x;
        double ly = scene.light[1] - y;
        double lz = scene.light[2] - z;
        double far = Math.sqrt(lx * lx + ly * ly + lz * lz);
        double direct = -lz / far * (scene.light[2] * scene.light[2]) / (far * far);
        double around = 1;
        double seen = 1;
        if (shading != null) {
            for (Scene.Board board : shading) {
                double reach = board.thickness * Math.hypot(lx, ly) / -lz;
                if (!board.field.near(x, y)) {
                    continue;
                }
                double d = board.field.at(x, y);
                if (d > 0) {
                    around = Math.min(around, 1 - 0.35 * Math.exp(-d / board.thickness));
                }
                int steps = (int) Math.ceil(reach / 0.4) + 1;
                for (int i = 0; i <= steps; i++) {
                    double s = (double) i / steps;
                    double px = x + lx / -lz * board.thickness * s;
                    double py = y + ly / -lz * board.thickness * s;
                    double soft = 0.08 + scene.penumbra * reach * s;
                    seen = Math.min(seen, Math.clamp(0.5 + board.field.at(px, py) / (2 * soft), 0, 1));
                }
            }
        }
        for (int c = 0; c < 3; c++) {
            light[c] = scene.ambient * around * scene.ambientColour[c]
                    + (1 - scene.ambient) * direct * seen * scene.lightColour[c];
        }
        return seen;
    }

    private double[] face(Scene.Board board, double x, double y) {
        if (board.face != null) {
            return board.face.at(x, y);
        }
        double c = Math.cos(board.grainAngle);
        double s = Math.sin(board.grainAngle);
        double a = c * x + s * y;
        double b = -s * x + c * y;
        double g = 1
                + board.grain
                        * ((2 * noise(a * 0.015, b * 0.5, board.seed) - 1)
                                + 0.6 * (2 * noise(a * 0.05, b * 2.2, board.seed + 5) - 1));
        return new double[] {board.colour[0] * g, board.colour[1] * g * (1 - 0.02 * (g - 1)), board.colour[2] * g * g};
    }

    /** Smooth value noise, 0 to 1. */
    static double noise(double x, double y, int seed) {
        int i = (int) Math.floor(x);
        int j = (int) Math.floor(y);
        double fx = x - i;
        double fy = y - j;
        fx = fx * fx * (3 - 2 * fx);
        fy = fy * fy * (3 - 2 * fy);
        return (hash(i, j, seed) * (1 - fx) + hash(i + 1, j, seed) * fx) * (1 - fy)
                + (hash(i, j + 1, seed) * (1 - fx) + hash(i + 1, j + 1, seed) * fx) * fy;
    }

    private static double hash(int i, int j, int seed) {
        int h = i * 374761393 + j * 668265263 + seed * 1274126177;
        h = (h ^ h >>> 13) * 1274126177;
        h ^= h >>> 16;
        return (h & 0xFFFF) / 65535.0;
    }

    static void blur(float[] plane, int w, int h, double sigma) {
        int reach = (int) Math.ceil(2.6 * sigma);
        float[] kernel = new float[2 * reach + 1];
        float sum = 0;
        for (int i = -reach; i <= reach; i++) {
            kernel[i + reach] = (float) Math.exp(-i * i / (2 * sigma * sigma));
            sum += kernel[i + reach];
        }
        for (int i = 0; i < kernel.length; i++) {
            kernel[i] /= sum;
        }
        float[] half = new float[w * h];
        IntStream.range(0, h).parallel().forEach(v -> {
            for (int u = 0; u < w; u++) {
                float total = 0;
                for (int i = -reach; i <= reach; i++) {
                    total += kernel[i + reach] * plane[v * w + Math.clamp(u + i, 0, w - 1)];
                }
                half[v * w + u] = total;
            }
        });
        IntStream.range(0, h).parallel().forEach(v -> {
            for (int u = 0; u < w; u++) {
                float total = 0;
                for (int i = -reach; i <= reach; i++) {
                    total += kernel[i + reach] * half[Math.clamp(v + i, 0, h - 1) * w + u];
                }
                plane[v * w + u] = total;
            }
        });
    }
}
