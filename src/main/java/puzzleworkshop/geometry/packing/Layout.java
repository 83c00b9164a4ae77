package puzzleworkshop.geometry.packing;

import java.util.Arrays;

/** Where the pieces of one attempt lie, in whole units; {@code sheet[i] < 0} means not placed. */
final class Layout {

    final int[] sheet;
    final int[] x;
    final int[] y;
    final boolean[] turned;

    Layout(int count) {
        sheet = new int[count];
        x = new int[count];
        y = new int[count];
        turned = new boolean[count];
        Arrays.fill(sheet, -1);
    }

    void put(int piece, int onSheet, int atX, int atY, boolean isTurned) {
        sheet[piece] = onSheet;
        x[piece] = atX;
        y[piece] = atY;
        turned[piece] = isTurned;
    }

    void copyFrom(Layout other) {
        System.arraycopy(other.sheet, 0, sheet, 0, sheet.length);
        System.arraycopy(other.x, 0, x, 0, x.length);
        System.arraycopy(other.y, 0, y, 0, y.length);
        System.arraycopy(other.turned, 0, turned, 0, turned.length);
    }

    Layout copy() {
        Layout copy = new Layout(sheet.length);
        copy.copyFrom(this);
        return copy;
    }

    int top(ItemShapes shapes, int piece) {
        return y[piece] + (turned[piece] ? shapes.width[piece] : shapes.height[piece]);
    }

    /** How far the placed pieces of one sheet reach. */
    int length(ItemShapes shapes, int onSheet) {
        int reach = 0;
        for (int i = 0; i < sheet.length; i++) {
            if (sheet[i] == onSheet) {
                reach = Math.max(reach, top(shapes, i));
            }
        }
        return reach;
    }

    int sheets() {
        int most = -1;
        for (int s : sheet) {
            most = Math.max(most, s);
        }
        return most + 1;
    }
}
