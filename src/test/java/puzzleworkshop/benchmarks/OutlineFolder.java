package puzzleworkshop.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;

/** Reads outlines from files: {@code outer x,y …}, {@code hole …}, {@code bad …}; every file of a folder. */
final class OutlineFolder {

    record Instance(String name, List<Point> outer, List<List<Point>> holes) {

        Outline outline() {
            return Outline.mended(outer, holes);
        }

        /** The free area made by JTS alone, apart from our own way of making it. */
        Geometry judge() {
            Geometry area = polygon(outer);
            for (List<Point> hole : holes) {
                area = OverlayNGRobust.overlay(area, polygon(hole), OverlayNG.DIFFERENCE);
            }
            return area;
        }

        private static Geometry polygon(List<Point> ring) {
            Coordinate[] closed = new Coordinate[ring.size() + 1];
            for (int i = 0; i < closed.length; i++) {
                Point spot = ring.get(i % ring.size());
                closed[i] = new Coordinate(spot.xMm(), spot.yMm());
            }
            return GeometryFixer.fix(new GeometryFactory().createPolygon(closed));
        }
    }

    private OutlineFolder() {}

    static List<Instance> read(Path folder) throws IOException {
        List<Instance> all = new ArrayList<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
                Instance instance = readFile(file);
                if (instance != null) {
                    all.add(instance);
                }
            }
        }
        return all;
    }

    /** Null when the file holds no outline. */
    private static Instance readFile(Path file) throws IOException {
        List<Point> outer = null;
        List<List<Point>> holes = new ArrayList<>();
        for (String line : Files.readAllLines(file)) {
            String[] words = line.strip().split("\\s+");
            if (words[0].equals("outer")) {
                outer = ring(words);
            } else if (words[0].equals("hole") || words[0].equals("bad")) {
                List<Point> ring = ring(words);
                if (ring.size() >= 3) {
                    holes.add(ring);
                }
            }
        }
        return outer == null || outer.size() < 3
                ? null
                : new Instance(file.getFileName().toString(), outer, holes);
    }

    private static List<Point> ring(String[] words) {
        List<Point> ring = new ArrayList<>();
        for (int i = 1; i < words.length; i++) {
            String[] pair = words[i].split(",");
            ring.add(new Point(Double.parseDouble(pair[0]), Double.parseDouble(pair[1])));
        }
        return ring;
    }
}
