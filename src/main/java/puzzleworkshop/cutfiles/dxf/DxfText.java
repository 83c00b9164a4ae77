package puzzleworkshop.cutfiles.dxf;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.WorkLimit;

/**
 * The rows of an ASCII DXF file: group code and value in turns (DXF reference, 'group codes'). Kept as numbers in flat
 * arrays: a file of 30 MB has millions of rows.
 */
final class DxfText {

    private static final int LONGEST_NUMBER = 400;

    private final byte[] bytes;
    private int count;
    private int[] codes = new int[1024];
    private int[] starts = new int[1024];
    private int[] ends = new int[1024];

    private DxfText(byte[] bytes) {
        this.bytes = bytes;
    }

    /** @throws Refused when it is no DXF, a binary one, or another drawing format */
    static DxfText read(String name, byte[] bytes, WorkLimit limit) {
        String head = new String(bytes, 0, Math.min(bytes.length, 24), StandardCharsets.ISO_8859_1);
        if (head.startsWith("AutoCAD Binary DXF")) {
            throw new Refused("cutfiles.file.binary_dxf", name);
        }
        if (head.matches("(?s)AC1[0-9.]{2,4}.*")) {
            throw new Refused("cutfiles.file.dwg", name);
        }
        DxfText text = new DxfText(bytes);
        text.readRows(name, limit);
        return text;
    }

    private void readRows(String name, WorkLimit limit) {
        int at = startsWithMark() ? 3 : 0;
        int row = 0;
        while (at < bytes.length) {
            if ((row & 7) == 0) {
                limit.steps(4);
            }
            int codeEnd = lineEnd(at);
            int codeAt = at;
            at = next(codeEnd);
            row += 2;
            if (isBlank(codeAt, codeEnd) && at >= bytes.length) {
                break;
            }
            int code = code(codeAt, codeEnd);
            if (code == Integer.MIN_VALUE) {
                throw new Refused("cutfiles.file.no_dxf", name, row - 1);
            }
            int end = at < bytes.length ? lineEnd(at) : at;
            store(code, at, end);
            at = next(end);
        }
        boolean some = false;
        for (int i = 0; i < count && !some; i++) {
            some = codes[i] == 0;
        }
        if (!some) {
            throw new Refused("cutfiles.file.no_dxf", name, 1);
        }
    }

    private boolean startsWithMark() {
        return bytes.length > 2 && bytes[0] == (byte) 0xEF && bytes[1] == (byte) 0xBB && bytes[2] == (byte) 0xBF;
    }

    private boolean isBlank(int from, int to) {
        for (int i = from; i < to; i++) {
            if (bytes[i] > ' ' && bytes[i] != 0x1A) { // some end with the old sign for the end of a text
                return false;
            }
        }
        return true;
    }

    private int code(int from, int to) {
        int i = from;
        int end = to;
        while (i < end && bytes[i] <= ' ' && bytes[i] >= 0) {
            i++;
        }
        while (end > i && bytes[end - 1] <= ' ' && bytes[end - 1] >= 0) {
            end--;
        }
        boolean minus = i < end && bytes[i] == '-';
        i += minus ? 1 : 0;
        if (i == end || end - i > 6) {
            return Integer.MIN_VALUE;
        }
        int value = 0;
        for (; i < end; i++) {
            if (bytes[i] < '0' || bytes[i] > '9') {
                return Integer.MIN_VALUE;
            }
            value = value * 10 + bytes[i] - '0';
        }
        return minus ? -value : value;
    }

    private int lineEnd(int from) {
        int i = from;
        while (i < bytes.length && bytes[i] != '\n' && bytes[i] != '\r') {
            i++;
        }
        return i;
    }

    private int next(int end) {
        return end + 1 < bytes.length && bytes[end] == '\r' && bytes[end + 1] == '\n' ? end + 2 : end + 1;
    }

    private void store(int code, int from, int to) {
        if (count == codes.length) {
            codes = Arrays.copyOf(codes, count * 2);
            starts = Arrays.copyOf(starts, count * 2);
            ends = Arrays.copyOf(ends, count * 2);
        }
        int start = Math.min(from, bytes.length);
        int end = Math.min(to, bytes.length);
        while (start < end && bytes[start] >= 0 && bytes[start] <= ' ') {
            start++;
        }
        while (end > start && bytes[end - 1] >= 0 && bytes[end - 1] <= ' ') {
            end--;
        }
        codes[count] = code;
        starts[count] = start;
        ends[count] = end;
        count++;
    }

    int count() {
        return count;
    }

    int code(int row) {
        return codes[row];
    }

    String text(int row) {
        return new String(bytes, starts[row], ends[row] - starts[row], StandardCharsets.ISO_8859_1);
    }

    boolean is(int row, String text) {
        if (ends[row] - starts[row] != text.length()) {
            return false;
        }
        for (int i = 0; i < text.length(); i++) {
            if (bytes[starts[row] + i] != text.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    /** @throws NumberFormatException for what is none */
    double number(int row) {
        if (ends[row] - starts[row] > LONGEST_NUMBER) {
            throw new NumberFormatException("a number of " + (ends[row] - starts[row]) + " digits");
        }
        return Double.parseDouble(text(row));
    }
}
