package puzzleworkshop.cutfiles.dxf;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import puzzleworkshop.cutfiles.found.FoundLines;
import puzzleworkshop.cutfiles.found.Remark;
import puzzleworkshop.measure.Refused;

/**
 * Reads the lines of an ASCII DXF file of any release in real millimetres: units of the header, layers that show, the
 * drawing itself and not its sheets of paper, blocks placed by INSERT, and the kinds of line a cutter meets. Letters,
 * dimensions and points are no lines; hatchings, solids and what is not flat are said and handed over as not sure.
 */
public final class DxfDrawing {

    private static final int DEEPEST = 16;
    private static final int ON_PAPER = 1;
    private static final int THREE_DIMENSIONAL = 8;
    private static final int MESH = 16 | 64;
    private static final int OUTSIDE_FILE = 4 | 8 | 16;
    private static final double SAME_HEIGHT = 1e-6;

    /** Belong to what stands before them, or are no part of a drawing. */
    private static final Set<String> PARTS =
            Set.of("VERTEX", "SEQEND", "ATTRIB", "ENDBLK", "BLOCK", "ENDSEC", "SECTION", "EOF", "VIEWPORT", "ATTDEF");

    private static final Set<String> WORDS = Set.of(
            "TEXT",
            "MTEXT",
            "RTEXT",
            "ARCALIGNEDTEXT",
            "DIMENSION",
            "ARC_DIMENSION",
            "LARGE_RADIAL_DIMENSION",
            "LEADER",
            "MULTILEADER",
            "MLEADER",
            "TOLERANCE",
            "ACAD_TABLE",
            "GEOPOSITIONMARKER");

    private static final Set<String> NO_LINES =
            Set.of("POINT", "IMAGE", "WIPEOUT", "LIGHT", "CAMERA", "SUN", "OLEFRAME", "OLE2FRAME", "PDFUNDERLAY");

    private final FoundLines found;
    private final Map<String, List<DxfThing>> blocks = new HashMap<>();
    private final DxfLayers layers;
    private final List<DxfThing> entities;
    private final double millimetres;
    private boolean paper;
    private int onPaper;

    private DxfDrawing(FoundLines found, byte[] bytes) {
        this.found = found;
        DxfSections sections = DxfSections.of(DxfText.read(found.name(), bytes, found.limit()), found.limit());
        this.millimetres = DxfUnits.millimetres(sections.of("HEADER"), found);
        this.layers = new DxfLayers(sections.of("TABLES"));
        this.entities = sections.of("ENTITIES");
        collectBlocks(sections.of("BLOCKS"));
    }

    /** @throws Refused when it is no DXF in text form, or damaged */
    public static void read(FoundLines found, byte[] bytes) {
        try {
            DxfDrawing drawing = new DxfDrawing(found, bytes);
            drawing.draw();
        } catch (NumberFormatException wrong) {
            throw new Refused("cutfiles.file.damaged", found.name());
        }
    }

    private void collectBlocks(List<DxfThing> things) {
        List<DxfThing> open = null;
        for (DxfThing thing : things) {
            if (thing.kind().equals("BLOCK")) {
                open = new ArrayList<>();
                open.add(thing);
                blocks.put(thing.name(2), open);
            } else if (thing.kind().equals("ENDBLK")) {
                open = null;
            } else if (open != null) {
                open.add(thing);
            }
        }
    }

    private void draw() {
        // y runs up in DXF; here it runs down
        AffineTransform toMm = AffineTransform.getScaleInstance(millimetres, -millimetres);
        draw(entities, toMm, "0", 0);
        List<DxfThing> model = blocks.getOrDefault("*MODEL_SPACE", List.of());
        draw(model, toMm, "0", 0);
        if (onPaper == 0) {
            return;
        }
        if (found.lines().isEmpty() && found.unsure().isEmpty()) {
            paper = true;
            draw(entities, toMm, "0", 0);
            found.remark(Remark.Kind.UNSURE, "cutfiles.dxf.only_paper", onPaper);
        } else {
            found.remark(Remark.Kind.NOTE, "cutfiles.dxf.paper", onPaper);
        }
    }

    /** @param around layer of the block's place, for what lies on layer 0 of it */
    private void draw(List<DxfThing> things, AffineTransform toMm, String around, int depth) {
        for (int i = 0; i < things.size(); i++) {
            DxfThing thing = things.get(i);
            found.limit().steps(4);
            if (PARTS.contains(thing.kind())) {
                continue;
            }
            if (depth == 0 && (thing.whole(67, 0) == ON_PAPER) != paper) {
                onPaper += paper ? 0 : 1;
                continue;
            }
            String layer = thing.name(8);
            String holds = layer.isEmpty() || layer.equals("0") ? around : layer;
            DxfLayers.State state = layers.of(holds);
            boolean insert = thing.kind().equals("INSERT");
            if (thing.whole(60, 0) == 1) {
                found.count(Remark.Kind.NOTE, "cutfiles.dxf.invisible");
            } else if (state == DxfLayers.State.FROZEN || state != DxfLayers.State.SHOWN && !insert) {
                found.count(Remark.Kind.NOTE, "cutfiles.dxf.layer." + state, shortened(holds));
            } else {
                try {
                    if (insert) {
                        insert(thing, toMm, holds, depth);
                    } else {
                        thing(thing, things, i, toMm, holds);
                    }
                } catch (IllegalArgumentException unreadable) {
                    found.count(Remark.Kind.UNSURE, "cutfiles.file.unreadable_parts");
                }
            }
        }
    }

    private static String shortened(String layer) {
        return layer.length() <= 40 ? layer : layer.substring(0, 40) + "…";
    }

    private void thing(DxfThing thing, List<DxfThing> things, int at, AffineTransform toMm, String layer) {
        switch (thing.kind()) {
            case "LINE" -> add(thing, DxfCurves.line(thing), toMm, layer, isLevel(thing, 30, 31));
            case "CIRCLE" -> planar(thing, DxfCurves.circle(thing), toMm, layer);
            case "ARC" -> planar(thing, DxfCurves.arc(thing), toMm, layer);
            case "LWPOLYLINE" -> planar(thing, DxfCurves.lightPolyline(thing), toMm, layer);
            case "POLYLINE" -> polyline(thing, things, at, toMm, layer);
            case "ELLIPSE" ->
                add(
                        thing,
                        DxfCurves.ellipse(thing),
                        toMm,
                        layer,
                        DxfPlanes.isFlat(thing) && Math.abs(thing.number(31, 0)) < SAME_HEIGHT);
            case "SPLINE" -> spline(thing, toMm, layer);
            case "SOLID", "TRACE" -> found.count(Remark.Kind.NOTE, "cutfiles.dxf.solid_hatch");
            case "3DFACE" -> unsure(thing, DxfCurves.face(thing), toMm);
            case "HATCH" -> {
                boolean solid = thing.whole(70, 1) == 1;
                found.count(
                        solid ? Remark.Kind.NOTE : Remark.Kind.UNSURE,
                        solid ? "cutfiles.dxf.solid_hatch" : "cutfiles.dxf.hatch");
            }
            default -> {
                if (WORDS.contains(thing.kind())) {
                    found.count(Remark.Kind.NOTE, "cutfiles.dxf.words", thing.kind());
                } else if (NO_LINES.contains(thing.kind())) {
                    found.count(Remark.Kind.NOTE, "cutfiles.dxf.no_line", thing.kind());
                } else {
                    found.count(Remark.Kind.UNSURE, "cutfiles.file.passed_over", shortened(thing.kind()));
                }
            }
        }
    }

    private void polyline(DxfThing thing, List<DxfThing> things, int at, AffineTransform toMm, String layer) {
        if (thing.has(70, MESH)) {
            found.count(Remark.Kind.UNSURE, "cutfiles.dxf.mesh");
            return;
        }
        Shape shape = DxfCurves.oldPolyline(thing, things, at);
        if (thing.has(70, THREE_DIMENSIONAL)) {
            double height = Double.NaN;
            boolean level = true;
            for (int i = at + 1; i < things.size() && things.get(i).kind().equals("VERTEX"); i++) {
                double z = things.get(i).number(30, 0);
                level &= Double.isNaN(height) || Math.abs(z - height) < SAME_HEIGHT;
                height = z;
            }
            add(thing, shape, toMm, layer, level);
        } else {
            planar(thing, shape, toMm, layer);
        }
    }

    private void spline(DxfThing thing, AffineTransform toMm, String layer) {
        DxfSplines.Drawn drawn = DxfSplines.of(thing, found.limit());
        if (drawn.open()) {
            found.count(Remark.Kind.UNSURE, "cutfiles.dxf.spline_open");
        }
        if (drawn.fitted()) {
            found.count(Remark.Kind.ASSUMED, "cutfiles.dxf.spline_fitted");
        }
        boolean level = isLevel(thing.all(drawn.fitted() ? 31 : 30));
        add(thing, drawn.path(), toMm, layer, level);
    }

    private static boolean isLevel(DxfThing thing, int code, int other) {
        return Math.abs(thing.number(code, 0) - thing.number(other, 0)) < SAME_HEIGHT;
    }

    private static boolean isLevel(double[] heights) {
        for (double z : heights) {
            if (Math.abs(z - heights[0]) > SAME_HEIGHT) {
                return false;
            }
        }
        return true;
    }

    private static AffineTransform planeOf(DxfThing thing, AffineTransform toMm) {
        AffineTransform move = new AffineTransform(toMm);
        move.concatenate(DxfPlanes.toDrawing(thing));
        return move;
    }

    private void planar(DxfThing thing, Shape shape, AffineTransform toMm, String layer) {
        add(thing, shape, planeOf(thing, toMm), layer, DxfPlanes.isFlat(thing));
    }

    private void add(DxfThing thing, Shape shape, AffineTransform toMm, String layer, boolean flat) {
        if (!flat) {
            found.count(Remark.Kind.UNSURE, "cutfiles.dxf.not_flat");
            found.addUnsure(found.runs(shape, toMm));
            return;
        }
        found.add(found.runs(shape, toMm));
        String type = thing.name(6);
        if (type.isEmpty() || type.equals("BYLAYER")) {
            type = layers.linetype(layer);
        }
        if (!type.isEmpty() && !type.equals("CONTINUOUS") && !type.equals("BYBLOCK") && !type.equals("BYLAYER")) {
            found.count(Remark.Kind.ASSUMED, "cutfiles.file.dashed");
        }
    }

    private void unsure(DxfThing thing, Shape shape, AffineTransform toMm) {
        found.count(Remark.Kind.UNSURE, "cutfiles.dxf.face", thing.kind().toUpperCase(Locale.ROOT));
        found.addUnsure(found.runs(shape, toMm));
    }

    private final Set<String> open = new HashSet<>();

    private void insert(DxfThing insert, AffineTransform toMm, String layer, int depth) {
        String name = insert.name(2);
        List<DxfThing> block = blocks.get(name);
        if (block == null || depth >= DEEPEST || !open.add(name)) {
            found.count(Remark.Kind.UNSURE, "cutfiles.dxf.no_block", shortened(name));
            return;
        }
        try {
            if (block.getFirst().has(70, OUTSIDE_FILE)) {
                found.count(Remark.Kind.UNSURE, "cutfiles.dxf.outside", shortened(name));
            }
            int columns = Math.max(1, insert.whole(70, 1));
            int rows = Math.max(1, insert.whole(71, 1));
            AffineTransform plane = planeOf(insert, toMm);
            boolean flat = DxfPlanes.isFlat(insert);
            if (!flat) {
                found.count(Remark.Kind.UNSURE, "cutfiles.dxf.not_flat");
            }
            plane.translate(insert.number(10, 0), insert.number(20, 0));
            plane.rotate(Math.toRadians(insert.number(50, 0)));
            found.limit().steps((long) rows * columns * block.size());
            double acrossEach = insert.number(44, 0);
            double upEach = insert.number(45, 0);
            double scaleX = insert.number(41, 1);
            double scaleY = insert.number(42, 1);
            double baseX = block.getFirst().number(10, 0);
            double baseY = block.getFirst().number(20, 0);
            for (int row = 0; row < rows; row++) {
                for (int column = 0; column < columns; column++) {
                    AffineTransform place = new AffineTransform(plane);
                    place.translate(column * acrossEach, row * upEach);
                    place.scale(scaleX, scaleY);
                    place.translate(-baseX, -baseY);
                    draw(block, place, layer, depth + 1);
                }
            }
        } finally {
            open.remove(name);
        }
    }
}
