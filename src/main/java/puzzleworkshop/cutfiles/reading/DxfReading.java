package puzzleworkshop.cutfiles.reading;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/**
 * Reads the lines of an ASCII DXF file of any release in real millimetres: header units, blocks placed by INSERT (with
 * scale, angle, rows and columns), and the kinds of line a cutter meets: see {@link DxfShapes}.
 */
final class DxfReading {

    private static final Set<String> LINES =
            Set.of("LINE", "ARC", "CIRCLE", "ELLIPSE", "LWPOLYLINE", "POLYLINE", "SPLINE");
    private static final Set<String> PARTS =
            Set.of("VERTEX", "SEQEND", "ATTRIB", "ENDBLK", "BLOCK", "ENDSEC", "SECTION", "EOF", "VIEWPORT", "ATTDEF");
    private static final int DEEPEST = 16;

    private final LineCollector found;
    private final Map<String, List<DxfPairs.Thing>> blocks = new HashMap<>();
    private int placed;

    private DxfReading(String name) {
        this.found = new LineCollector(name);
    }

    static DrawnFile read(String name, byte[] bytes) {
        List<DxfPairs.Thing> things = DxfPairs.read(name, bytes);
        DxfReading reading = new DxfReading(name);
        try {
            double unit = reading.millimetresPerUnit(things);
            reading.collectBlocks(things);
            // y runs up in DXF; here it runs down
            reading.draw(section(things, "ENTITIES"), AffineTransform.getScaleInstance(unit, -unit), 0);
        } catch (NumberFormatException wrong) {
            throw new Refused("pattern.file.damaged", name, String.valueOf(wrong.getMessage()));
        }
        return new DrawnFile(
                name, DrawnFile.Kind.DXF, reading.found.lines(), Optional.empty(), reading.found.remarks());
    }

    /** Header variable $INSUNITS (AutoCAD DXF reference): 1 in, 2 ft, 4 mm, 5 cm, 6 m, 8 µin, 9 mil, 13 µm, 14 dm. */
    private double millimetresPerUnit(List<DxfPairs.Thing> things) {
        int units = 0;
        for (DxfPairs.Thing thing : section(things, "HEADER")) {
            List<DxfPairs.Pair> pairs = thing.pairs();
            for (int i = 0; i + 1 < pairs.size(); i++) {
                if (pairs.get(i).code() == 9 && pairs.get(i).value().equals("$INSUNITS")) {
                    units = Integer.parseInt(pairs.get(i + 1).value());
                }
            }
        }
        return switch (units) {
            case 1 -> 25.4;
            case 2 -> 304.8;
            case 4 -> 1;
            case 5 -> 10;
            case 6 -> 1000;
            case 8 -> 25.4e-6;
            case 9 -> 0.0254;
            case 13 -> 0.001;
            case 14 -> 100;
            default -> {
                found.remark(Sentence.of("pattern.file.no_units"));
                yield 1;
            }
        };
    }

    /** What lies between SECTION with this name and ENDSEC; the section's own pairs are its first thing. */
    private static List<DxfPairs.Thing> section(List<DxfPairs.Thing> things, String wanted) {
        List<DxfPairs.Thing> inside = new ArrayList<>();
        boolean within = false;
        for (DxfPairs.Thing thing : things) {
            if (thing.kind().equals("SECTION")) {
                within = thing.text(2).equals(wanted);
            } else if (thing.kind().equals("ENDSEC")) {
                within = false;
            }
            if (within) {
                inside.add(thing);
            }
        }
        return inside;
    }

    private void collectBlocks(List<DxfPairs.Thing> things) {
        List<DxfPairs.Thing> open = null;
        for (DxfPairs.Thing thing : section(things, "BLOCKS")) {
            if (thing.kind().equals("BLOCK")) {
                open = new ArrayList<>();
                open.add(thing);
                blocks.put(thing.text(2), open);
            } else if (thing.kind().equals("ENDBLK")) {
                open = null;
            } else if (open != null) {
                open.add(thing);
            }
        }
    }

    private void draw(List<DxfPairs.Thing> things, AffineTransform toMm, int depth) {
        for (int i = 0; i < things.size(); i++) {
            DxfPairs.Thing thing = things.get(i);
            if (thing.kind().equals("INSERT")) {
                insert(thing, toMm, depth);
            } else if (LINES.contains(thing.kind())) {
                try {
                    found.add(DxfShapes.of(thing, things, i), mirrored(thing, toMm));
                } catch (IllegalArgumentException unreadable) {
                    found.unreadable();
                }
            } else if (!PARTS.contains(thing.kind())) {
                found.passOver(thing.kind());
            }
        }
    }

    /** A thing drawn looking from behind (extrusion 0, 0, -1) lies mirrored left to right. */
    private static AffineTransform mirrored(DxfPairs.Thing thing, AffineTransform toMm) {
        boolean fromBehind = thing.number(230, 1) < 0
                && !thing.kind().equals("LINE")
                && !thing.kind().equals("SPLINE")
                && !thing.kind().equals("ELLIPSE");
        AffineTransform move = new AffineTransform(toMm);
        if (fromBehind) {
            move.scale(-1, 1);
        }
        return move;
    }

    private void insert(DxfPairs.Thing insert, AffineTransform toMm, int depth) {
        List<DxfPairs.Thing> block = blocks.get(insert.text(2));
        int columns = Math.max(1, insert.whole(70, 1));
        int rows = Math.max(1, insert.whole(71, 1));
        if (block == null || depth >= DEEPEST || (placed += columns * rows) > DrawnFile.MOST_LINES) {
            found.passOver("INSERT");
            return;
        }
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                AffineTransform place = mirrored(insert, toMm);
                place.translate(insert.number(10, 0), insert.number(20, 0));
                place.rotate(Math.toRadians(insert.number(50, 0)));
                place.translate(column * insert.number(44, 0), row * insert.number(45, 0));
                place.scale(insert.number(41, 1), insert.number(42, 1));
                place.translate(
                        -block.getFirst().number(10, 0), -block.getFirst().number(20, 0));
                draw(block, place, depth + 1);
            }
        }
    }
}
