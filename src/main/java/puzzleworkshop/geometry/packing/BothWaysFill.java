package puzzleworkshop.geometry.packing;

/** {@link NicheFill} from the bottom up or, seeing the sheet transposed, from the left to the right. */
final class BothWaysFill {

    private final NicheFill upwards;
    private final NicheFill sideways;
    private final Shapes shapes;

    /** What the last fill left over, in order. */
    int[] rest;

    int restSize;

    BothWaysFill(Shapes shapes, Effort effort) {
        this.shapes = shapes;
        upwards = new NicheFill(shapes, effort);
        sideways = new NicheFill(shapes.transposed(), effort);
    }

    long fill(boolean up, int width, int height, int[] order, int size, NicheFill.Taste taste, Layout out, int sheet) {
        NicheFill fill = up ? upwards : sideways;
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

    Shapes shapes() {
        return shapes;
    }
}
