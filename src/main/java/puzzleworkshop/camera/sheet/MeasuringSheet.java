package puzzleworkshop.camera.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What can be printed to measure on: a sheet with markers along its edges, or loose cards to lay around a larger board. Every
 * marker's number stands on one of them only, so a photo itself says what lies there. Paper sizes: ISO 216 and ANSI/ASME Y14.1.
 */
public enum MeasuringSheet {
    A4(210, 297, 0, 1, 8, 11),
    LETTER(215.9, 279.4, 34, 1, 8, 10),
    A3(420, 297, 66, 1, 16, 11),
    CARDS(90, 130, 116, 4, 4, 5);

    /** Side of a marker, mm; its code has eight by eight fields with the black frame. */
    public static final double MARKER = 12;

    /** From the paper's edge to the markers, mm: more than most printers leave white. */
    public static final double INSET = 6;

    /** Length of the line that shows whether the printer kept the size, mm. */
    public static final double LINE = 100;

    private final double width;
    private final double height;
    private final int parts;
    private final List<Marker> markers = new ArrayList<>();

    MeasuringSheet(double width, double height, int firstCode, int parts, int across, int down) {
        this.width = width;
        this.height = height;
        this.parts = parts;
        double first = INSET + MARKER / 2;
        int code = firstCode;
        for (int part = 0; part < parts; part++) {
            for (int row = 0; row < down; row++) {
                for (int column = 0; column < across; column++) {
                    if (row == 0 || row == down - 1 || column == 0 || column == across - 1) {
                        double x = first + column * (width - 2 * first) / (across - 1);
                        double y = first + row * (height - 2 * first) / (down - 1);
                        markers.add(new Marker(code++, x, y, MARKER));
                    }
                }
            }
        }
    }

    /** Of the sheet, or of one card; mm. */
    public double width() {
        return width;
    }

    public double height() {
        return height;
    }

    /** One sheet, or so many cards. */
    public int parts() {
        return parts;
    }

    /** Markers of one part (0 is the first), in the coordinates of that part. */
    public List<Marker> markers(int part) {
        int each = markers.size() / parts;
        return List.copyOf(markers.subList(part * each, (part + 1) * each));
    }

    /** Left end of the 100 mm line, mm from the left; it lies level. Cards have it beside them on their page. */
    public double lineX() {
        return INSET + MARKER + 6;
    }

    /** The 100 mm line's distance from the top, mm. */
    public double lineY() {
        return height - INSET - MARKER - 3;
    }

    /** Whether a printed line or letter (no marker) may stand there. */
    public boolean isLettered(double x, double y) {
        if (this == CARDS) {
            return x > INSET + MARKER
                    && x < width - INSET - MARKER
                    && y > INSET + MARKER
                    && y < height - INSET - MARKER;
        }
        return y > lineY() - 3.2 && y < lineY() + 2.4 && x > INSET + MARKER + 2 && x < width - INSET - MARKER - 2;
    }

    /** Which sheet a marker's number stands on. */
    public static Optional<MeasuringSheet> of(int code) {
        for (MeasuringSheet sheet : values()) {
            int first = sheet.markers.getFirst().code();
            if (code >= first && code < first + sheet.markers.size()) {
                return Optional.of(sheet);
            }
        }
        return Optional.empty();
    }

    /** Which part (card) a marker's number stands on; it must be one of this sheet. */
    public int partOf(int code) {
        return (code - markers.getFirst().code()) / (markers.size() / parts);
    }

    public Marker marker(int code) {
        return markers.get(code - markers.getFirst().code());
    }
}
