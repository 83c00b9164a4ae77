package puzzleworkshop.cutfiles.dxf;

import java.util.Arrays;
import java.util.Locale;

/**
 * One thing in the file: from a code 0 to the next.
 *
 * @param rows of the file
 * @param first row after the code 0 with its kind
 * @param end row after the last
 */
record DxfThing(DxfText rows, String kind, int first, int end) {

    /** The first value with a code; the given one where there is none. */
    double number(int code, double otherwise) {
        for (int i = first; i < end; i++) {
            if (rows.code(i) == code) {
                return rows.number(i);
            }
        }
        return otherwise;
    }

    /** Limited to what an int can hold. */
    int whole(int code, int otherwise) {
        return (int) number(code, otherwise);
    }

    boolean has(int code, int bit) {
        return (whole(code, 0) & bit) != 0;
    }

    String text(int code) {
        for (int i = first; i < end; i++) {
            if (rows.code(i) == code) {
                return rows.text(i);
            }
        }
        return "";
    }

    /** Names are the same in capital and small letters. */
    String name(int code) {
        return text(code).toUpperCase(Locale.ROOT);
    }

    double[] all(int code) {
        double[] all = new double[16];
        int count = 0;
        for (int i = first; i < end; i++) {
            if (rows.code(i) == code) {
                if (count == all.length) {
                    all = Arrays.copyOf(all, count * 2);
                }
                all[count++] = rows.number(i);
            }
        }
        return Arrays.copyOf(all, count);
    }
}
