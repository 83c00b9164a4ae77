package puzzleworkshop.pattern;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * Few large shapes for children: a heart, a circle, a house, a star, laid on every second meeting point of a coarse grid, so
 * that four pieces meet at each and a child finds them first. Points of the star are blunt, so that none breaks off.
 */
public final class LargeShapes {

    /** Of the shorter side of a grid's piece. */
    private static final double SIZE = 0.86;

    private static final int STAR_POINTS = 5;
    private static final double STAR_INNER = 0.56;

    private LargeShapes() {}

    /**
     * @param most no more shapes than this; fewer where the grid has fewer places for them
     */
    public static List<PersonalShape> laid(Size size, PieceGrid grid, int most) {
        double width = size.width().mm() / grid.columns();
        double height = size.height().mm() / grid.rows();
        double side = SIZE * Math.min(width, height);
        List<PersonalShape> shapes = new ArrayList<>();
        for (int row = 1; row < grid.rows() && shapes.size() < most; row += 2) {
            for (int column = 1; column < grid.columns() && shapes.size() < most; column += 2) {
                shapes.add(shape(shapes.size(), Point.of(column * width, row * height), side));
            }
        }
        return shapes;
    }

    private static PersonalShape shape(int which, Point middle, double side) {
        return switch (which % 4) {
            case 0 -> PersonalShapes.heart(middle, Length.mm(side));
            case 1 -> new PersonalShape("circle", KeptWhole.oval(middle, side / 2, side / 2));
            case 2 -> house(middle, side);
            default -> star(middle, side / 2);
        };
    }

    private static PersonalShape house(Point middle, double side) {
        double half = side / 2;
        double eaves = -0.1 * side;
        return new PersonalShape(
                "house",
                CurvePath.through(
                        List.of(
                                middle.plus(0, -half),
                                middle.plus(half, eaves),
                                middle.plus(0.8 * half, eaves),
                                middle.plus(0.8 * half, half),
                                middle.plus(-0.8 * half, half),
                                middle.plus(-0.8 * half, eaves),
                                middle.plus(-half, eaves)),
                        true));
    }

    private static PersonalShape star(Point middle, double radius) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < 2 * STAR_POINTS; i++) {
            double angle = -Math.PI / 2 + Math.PI * i / STAR_POINTS;
            double out = i % 2 == 0 ? radius : STAR_INNER * radius;
            points.add(middle.plus(out * Math.cos(angle), out * Math.sin(angle)));
        }
        return new PersonalShape("star", CurvePath.through(points, true));
    }
}
