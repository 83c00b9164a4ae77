package puzzleworkshop.artwork;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.artwork.PrintPicture.Box;
import puzzleworkshop.artwork.PrintPicture.Lay;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.pixels.Orientation;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * How a stored picture is laid on a sticker so that it shows a crop: as one linear map for EXIF orientation, quarter turns
 * and frame together, and for an overhang that is folded back as more of the same, reflected. It shows what
 * {@code reading.Framing} would draw.
 */
final class PrintLayout {

    /** Reflected pictures begin so far inside: no hairline of paper shows between them. A fifth of a pixel at 300 per inch. */
    private static final double LAP = 0.02;

    private static final double NOTHING = 1e-6;

    private final int orientation;
    private final Crop crop;
    private final double overhang;
    private final Axis across;
    private final Axis down;

    private PrintLayout(int orientation, Crop crop, Size finished, double overhang) {
        this.orientation = orientation;
        this.crop = crop;
        this.overhang = overhang;
        this.across = new Axis(crop.left(), crop.width(), finished.width().mm());
        this.down = new Axis(crop.top(), crop.height(), finished.height().mm());
    }

    /** Whether a crop can be shown without new pixels: the last row drawn on outwards cannot. */
    static boolean canShow(Crop crop, Size finished, Length overhang) {
        PrintLayout layout = new PrintLayout(1, crop, finished, overhang.mm());
        return crop.fit() == Crop.Fit.FIT
                || crop.edge() == Crop.Edge.MIRRORED
                || layout.across.covers() && layout.down.covers();
    }

    /** @param orientation EXIF, 1 to 8 */
    static List<Lay> of(int orientation, Crop crop, Size finished, Length overhang) {
        PrintLayout layout = new PrintLayout(orientation, crop, finished, overhang.mm());
        List<Lay> laid = new ArrayList<>();
        List<Piece> columns = layout.across.pieces();
        List<Piece> rows = layout.down.pieces();
        // What is folded twice lies lowest, the picture itself on top.
        for (int folds = 2; folds >= 0; folds--) {
            for (Piece column : columns) {
                for (Piece row : rows) {
                    Box within = new Box(column.from, row.from, column.to, row.to);
                    if (column.folds + row.folds == folds && !within.isEmpty()) {
                        laid.add(layout.lay(column, row, within));
                    }
                }
            }
        }
        return laid;
    }

    /** A drawn picture: upright, in the middle of the sticker, larger than it by less than a pixel. */
    static List<Lay> middle(Size printed, Size sticker) {
        double w = printed.width().mm();
        double h = printed.height().mm();
        double x = (sticker.width().mm() - w) / 2;
        double y = (sticker.height().mm() - h) / 2;
        return List.of(new Lay(
                x,
                y,
                w,
                0,
                0,
                h,
                new Box(0, 0, sticker.width().mm(), sticker.height().mm())));
    }

    private Lay lay(Piece column, Piece row, Box within) {
        double[] corner = place(0, 0, column, row);
        double[] right = place(1, 0, column, row);
        double[] below = place(0, 1, column, row);
        return new Lay(
                corner[0],
                corner[1],
                right[0] - corner[0],
                right[1] - corner[1],
                below[0] - corner[0],
                below[1] - corner[1],
                within);
    }

    /** A point of the stored picture, in shares of it, on the sticker. */
    private double[] place(double u, double v, Piece column, Piece row) {
        double[] seen = Orientation.turned(Orientation.upright(orientation, u, v), crop.quarterTurns());
        return new double[] {column.fold(across.mm(seen[0])), row.fold(down.mm(seen[1]))};
    }

    /** The picture, or its reflection at a line, in one direction. */
    private record Piece(int folds, double line, double from, double to) {
        double fold(double mm) {
            return folds == 0 ? mm : 2 * line - mm;
        }
    }

    /** One direction of the sticker: the frame's share of the picture is as long as the finished puzzle. */
    private final class Axis {
        private final double start;
        private final double scale;
        private final double whole;

        Axis(double from, double share, double finished) {
            this.scale = finished / share;
            this.start = overhang - from * scale;
            this.whole = finished + 2 * overhang;
        }

        double mm(double share) {
            return start + share * scale;
        }

        boolean covers() {
            return mm(0) <= NOTHING && mm(1) >= whole - NOTHING;
        }

        List<Piece> pieces() {
            List<Piece> pieces = new ArrayList<>();
            pieces.add(new Piece(0, 0, 0, whole));
            if (crop.fit() == Crop.Fit.FIT) {
                // Folded at the frame's edge, so that a border goes on and a picture that reaches the edge does too.
                pieces.add(new Piece(
                        1,
                        overhang + LAP,
                        Math.max(0, 2 * overhang - mm(1)),
                        Math.min(overhang, 2 * overhang - mm(0)) + LAP));
                double edge = whole - overhang;
                pieces.add(new Piece(
                        1, edge - LAP, Math.max(edge, 2 * edge - mm(1)) - LAP, Math.min(whole, 2 * edge - mm(0))));
                return pieces;
            }
            if (mm(0) > NOTHING) {
                pieces.add(new Piece(1, mm(0) + LAP, 0, mm(0) + 2 * LAP));
            }
            if (mm(1) < whole - NOTHING) {
                pieces.add(new Piece(1, mm(1) - LAP, mm(1) - 2 * LAP, whole));
            }
            return pieces;
        }
    }
}
