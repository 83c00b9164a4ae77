package puzzleworkshop.geometry.packing;

/** {@link SkylineBestFit} from the bottom up or, seeing the sheet transposed, from the left to the right. */
final class TransposedFill {

    private final SkylineBestFit upwards;
    private final SkylineBestFit sideways;
    private final ItemShapes shapes;

    /** What the last fill left over, in order. */
    int[] rest;

    int restSize;

    TransposedFill(ItemShapes shapes, WorkBudget effort) {
        this.shapes = shapes;
        upwards = new SkylineBestFit(shapes, effort);
        sideways = new SkylineBestFit(shapes.transposed(), effort);
    }

    long fill(
            boolean up,
            int width,
            int height,
            int[] order,
            int size,
            SkylineBestFit.Taste taste,
            Layout out,
            int sheet) {
        SkylineBestFit fill = up ? upwards : sideways;
        for (int k = 0; k < size; k++) {
            out.sheet[order[k]] = -1;
        }
        long area = up
                ? fill.fill(width, height, order, size, taste, out, sheet)
                : fill.fill(height, width, order, size, taste, out, sheet);
        rest = fill.rest;
        restSize = fill.restSize;
        if (!up) {
            for (int k = 0; k < size; k++) {
                int piece = order[k];
                if (out.sheet[piece] == sheet) {
                    int swap = out.x[piece];
                    out.x[piece] = out.y[piece];
                    out.y[piece] = swap;
                }
            }
        }
        return area;
    }

    ItemShapes shapes() {
        return shapes;
    }
}
