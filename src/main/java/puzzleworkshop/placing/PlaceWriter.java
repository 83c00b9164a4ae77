package puzzleworkshop.placing;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import puzzleworkshop.cutfiles.writing.CutFile;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.cutfiles.writing.GcodeFile;
import puzzleworkshop.cutfiles.writing.GcodeFile.Purpose;
import puzzleworkshop.cutfiles.writing.MachinePage;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.placing.given.FileForm;
import puzzleworkshop.placing.given.SettingWords;

/** One file for boards of one cut, each where it was found to lie on one machine. */
final class PlaceWriter {

    /** Frames are traced no faster, so that an eye can follow (common practice). */
    private static final double FRAME_MM_PER_SECOND = 50;
    /**
     * Most of the energy of one pass, for each millimetre, that a frame may bring: from about a tenth on print and tape show
     * marks (common practice), and a slow machine brings much at little power.
     */
    static final double MOST_FRAME_ENERGY = 0.05;

    private final Laid laid;
    private final List<ReadyPlace> places;
    private final ReadyPlace first;
    private final Machine machine;
    private final Purpose purpose;

    PlaceWriter(Laid laid, Purpose purpose) {
        this.laid = laid;
        this.places = laid.places();
        this.first = places.getFirst();
        this.machine = first.machine();
        this.purpose = purpose;
    }

    /** What is written, on the bed; refused when it must not be. */
    CutPlan plan(FileForm form) {
        if (form == FileForm.GCODE && !machine.control().takesGcode()) {
            throw new Refused("placing.file.no-gcode", machine.name());
        }
        if (form != FileForm.GCODE && purpose == Purpose.DRY_RUN) {
            throw new Refused("placing.file.no-dry-run");
        }
        List<CutPlan> cuts = laid.cuts();
        if (purpose == Purpose.FRAME) {
            requireFaint(form);
            return new CutPlan(title() + " frame", cuts.getFirst().sequence(), List.of(), laid.frames(), 0, 0);
        }
        if (purpose == Purpose.CUT) {
            places.stream().filter(place -> !place.traced()).findFirst().ifPresent(place -> {
                throw new Refused("placing.file.trace-first", place.position().copy());
            });
        }
        List<CurvePath> inner = new ArrayList<>();
        List<CurvePath> outline = new ArrayList<>();
        cuts.forEach(cut -> {
            inner.addAll(cut.inner());
            outline.addAll(cut.outline());
        });
        return new CutPlan(
                title(),
                cuts.getFirst().sequence(),
                inner,
                outline,
                cuts.stream().mapToDouble(CutPlan::travelMm).sum(),
                cuts.stream().mapToDouble(CutPlan::travelAsDrawnMm).sum());
    }

    private String title() {
        String order = first.print().plan().title();
        return places.size() == 1
                ? order
                : order + " boards "
                        + places.stream()
                                .map(place -> Integer.toString(place.position().copy()))
                                .collect(Collectors.joining(" "));
    }

    /** A frame is looked at, not cut: what its beam brings stays far below what the cut needs. */
    private void requireFaint(FileForm form) {
        CutParameters set = first.job().parameters();
        double cut = set.power().asDouble() / cutSpeed();
        double frame = machine.control().framePower().asDouble() / frameSpeed();
        if (form == FileForm.GCODE && frame > MOST_FRAME_ENERGY * cut) {
            throw new Refused(
                    "placing.file.frame-burns",
                    machine.control().framePower(),
                    Percent.ofFraction(java.math.BigDecimal.valueOf(MOST_FRAME_ENERGY * cut * frameSpeed())
                            .setScale(4, java.math.RoundingMode.DOWN)));
        }
    }

    private double frameSpeed() {
        return Math.min(machine.motion().maxCut().mmPerSecond(), FRAME_MM_PER_SECOND);
    }

    private double cutSpeed() {
        return Math.min(
                first.job().parameters().speed().mmPerSecond(),
                machine.motion().maxCut().mmPerSecond());
    }

    byte[] bytes(FileForm form) {
        CutPlan wanted = plan(form);
        return form.drawing()
                .map(format -> CutFile.write(wanted, format, page()).bytes())
                .orElseGet(() -> gcode(wanted));
    }

    private byte[] gcode(CutPlan plan) {
        AffineTransform toMachine = machine.control().axes().toMachine(machine.bed());
        CutPlan lines = plan.transformed(toMachine);
        Point one = DrawnPrint.moved(new Point(0, 0), toMachine);
        Point other = DrawnPrint.moved(
                new Point(machine.bed().width().mm(), machine.bed().height().mm()), toMachine);
        Bounds bed = Bounds.at(one).and(other);
        CutParameters set = first.job().parameters();
        boolean frame = purpose == Purpose.FRAME;
        Percent framePower = machine.control().framePower();
        boolean dark = frame && framePower.asDouble() == 0;
        // inside the print by the proof that comes with the position: the print may lie turned, which upright bounds
        // cannot say
        GcodeFile.Job job = new GcodeFile.Job(
                lines.title() + " place "
                        + places.stream()
                                .map(place -> Long.toString(place.position().id()))
                                .collect(Collectors.joining(" ")),
                lines.inOrder(),
                (frame ? frameSpeed() : cutSpeed()) * 60,
                frame && !dark ? framePower.asDouble() : set.power().asDouble(),
                frame ? 1 : set.passes(),
                !frame && set.airAssist(),
                frame ? 0 : machine.passPause().toSeconds(),
                bed,
                bed.grownBy(machine.beam().kerf().mm()),
                machine.beam().kerf().mm());
        return GcodeFile.write(job, machine.control().words(), dark ? Purpose.DRY_RUN : purpose);
    }

    private MachinePage page() {
        SettingWords words = SettingWords.of(machine, first.job().parameters());
        return new MachinePage(
                Optional.of(machine.bed()),
                words(),
                purpose == Purpose.FRAME ? "FRAME_" + number(power()).replace('.', '-') + "PC" : words.layer());
    }

    /** What the file says or carries. */
    String words() {
        return switch (purpose) {
            case CUT -> SettingWords.of(machine, first.job().parameters()).words();
            case FRAME -> "frame to trace, " + number(power()) + " % power, once";
            case DRY_RUN -> "dry run, beam off";
        };
    }

    Percent power() {
        return switch (purpose) {
            case CUT -> first.job().parameters().power();
            case FRAME -> machine.control().framePower();
            case DRY_RUN -> Percent.ZERO;
        };
    }

    private static String number(Percent share) {
        return SettingWords.number(share.hundredths().doubleValue(), 1);
    }

    /**
     * Boards of one cut as they lie on the bed: their lines are brought there once, whatever files are then asked for.
     *
     * @param places at least one
     * @param cuts what is cut of each, on the bed
     * @param frames what is traced of each before
     */
    record Laid(List<ReadyPlace> places, List<CutPlan> cuts, List<CurvePath> frames) {

        private static final double FLATTENING_MM = 0.05;
        private static final GeometryFactory JTS = new GeometryFactory();

        Laid {
            places = List.copyOf(places);
            cuts = List.copyOf(cuts);
            frames = List.copyOf(frames);
        }

        /** @throws Refused when one would leave the bed, or two would lie on one another */
        static Laid of(List<ReadyPlace> places) {
            requireApart(places);
            return new Laid(
                    places,
                    places.stream().map(ReadyPlace::cut).toList(),
                    places.stream().map(ReadyPlace::frame).toList());
        }

        /** Two boards cannot lie on one another: then one was measured at the other's marks. */
        private static void requireApart(List<ReadyPlace> places) {
            List<Polygon> edges =
                    places.stream().map(place -> polygon(place.edges())).toList();
            for (int i = 0; i < places.size(); i++) {
                for (int j = 0; j < i; j++) {
                    if (edges.get(i).intersects(edges.get(j))) {
                        throw new Refused(
                                "placing.file.on-another",
                                places.get(j).position().copy(),
                                places.get(i).position().copy());
                    }
                }
            }
        }

        private static Polygon polygon(CurvePath ring) {
            return JTS.createPolygon(ring.flattened(FLATTENING_MM).stream()
                    .map(p -> new Coordinate(p.xMm(), p.yMm()))
                    .toArray(Coordinate[]::new));
        }
    }
}
