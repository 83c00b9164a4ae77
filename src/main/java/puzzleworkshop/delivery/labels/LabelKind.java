package puzzleworkshop.delivery.labels;

import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * Common labels: single ones from a roll, and sheets of A4 or Letter with the sizes and margins that makers of such sheets
 * publish (several makers use the same; common practice, the test says which were read and which are from memory). Lengths
 * are from the sheet's upper left corner. Sheets differ a little between printers: the first page is tried on plain paper.
 */
public enum LabelKind {
    ROLL_62_X_100(100, 62),
    ROLL_100_X_150(100, 150),
    ROLL_4_X_6_IN(in(4), in(6)),
    A4_3_X_8(210, 297, 3, 8, 70, 37, 0, 0.5, 70, 37),
    A4_3_X_7(210, 297, 3, 7, 63.5, 38.1, 7.25, 15.15, 66, 38.1),
    A4_2_X_4(210, 297, 2, 4, 99.1, 67.7, 4.65, 13.1, 101.6, 67.7),
    A4_2_X_2(210, 297, 2, 2, 105, 148, 0, 0.5, 105, 148),
    A4_1_X_2(210, 297, 1, 2, 199.6, 143.5, 5.2, 5, 199.6, 143.5),
    LETTER_3_X_10(in(8.5), in(11), 3, 10, in(2.625), in(1), in(0.1875), in(0.5), in(2.75), in(1)),
    LETTER_2_X_5(in(8.5), in(11), 2, 5, in(4), in(2), in(0.15625), in(0.5), in(4.1875), in(2)),
    LETTER_2_X_3(in(8.5), in(11), 2, 3, in(4), in(10 / 3.0), in(0.15625), in(0.5), in(4.1875), in(10 / 3.0)),
    LETTER_1_X_2(in(8.5), in(11), 1, 2, in(8.5), in(5.5), 0, 0, in(8.5), in(5.5));

    private final Size page;
    private final int across;
    private final int down;
    private final Size label;
    private final double leftMm;
    private final double topMm;
    private final double stepXMm;
    private final double stepYMm;

    /** One label is the page. */
    LabelKind(double widthMm, double heightMm) {
        this(widthMm, heightMm, 1, 1, widthMm, heightMm, 0, 0, widthMm, heightMm);
    }

    LabelKind(
            double pageWidthMm,
            double pageHeightMm,
            int across,
            int down,
            double widthMm,
            double heightMm,
            double leftMm,
            double topMm,
            double stepXMm,
            double stepYMm) {
        this.page = Size.mm(pageWidthMm, pageHeightMm);
        this.across = across;
        this.down = down;
        this.label = Size.mm(widthMm, heightMm);
        this.leftMm = leftMm;
        this.topMm = topMm;
        this.stepXMm = stepXMm;
        this.stepYMm = stepYMm;
    }

    private static double in(double inches) {
        return inches * Length.MM_PER_INCH;
    }

    public Size page() {
        return page;
    }

    public Size label() {
        return label;
    }

    /** How many labels are on a page. */
    public int places() {
        return across * down;
    }

    public int across() {
        return across;
    }

    public boolean isSheet() {
        return places() > 1;
    }

    /** Left edge of a place; places count from 0 in reading order. */
    double leftMm(int place) {
        return leftMm + place % across * stepXMm;
    }

    /** Upper edge of a place. */
    double topMm(int place) {
        return topMm + place / across * stepYMm;
    }

    public String textKey() {
        return "delivery.label." + name();
    }
}
