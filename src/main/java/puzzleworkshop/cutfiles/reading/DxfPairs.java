package puzzleworkshop.cutfiles.reading;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.measure.Refused;

/** The rows of an ASCII DXF file: group code and value in turns (AutoCAD DXF reference, 'group codes'). */
final class DxfPairs {

    /** One thing in the file: from a code 0 to the next. */
    record Thing(String kind, List<Pair> pairs) {

        /** The last value with a code; the given one where there is none. */
        double number(int code, double otherwise) {
            double value = otherwise;
            for (Pair pair : pairs) {
                if (pair.code() == code) {
                    value = Double.parseDouble(pair.value());
                }
            }
            return value;
        }

        int whole(int code, int otherwise) {
            return (int) number(code, otherwise);
        }

        String text(int code) {
            for (Pair pair : pairs) {
                if (pair.code() == code) {
                    return pair.value();
                }
            }
            return "";
        }

        List<Double> all(int code) {
            List<Double> all = new ArrayList<>();
            for (Pair pair : pairs) {
                if (pair.code() == code) {
                    all.add(Double.parseDouble(pair.value()));
                }
            }
            return all;
        }
    }

    record Pair(int code, String value) {}

    private DxfPairs() {}

    /** Every thing in order; what stands before the first code 0 is left out. */
    static List<Thing> read(String name, byte[] bytes) {
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        if (text.startsWith("AutoCAD Binary DXF")) {
            throw new Refused("pattern.file.binary_dxf", name);
        }
        List<Thing> things = new ArrayList<>();
        List<Pair> pairs = null;
        int at = 0;
        int row = 0;
        while (at < text.length()) {
            int endOfCode = lineEnd(text, at);
            String codeText = text.substring(at, endOfCode).strip();
            at = next(text, endOfCode);
            if (codeText.isEmpty() && at >= text.length()) {
                break;
            }
            int endOfValue = lineEnd(text, at);
            String value =
                    text.substring(Math.min(at, text.length()), endOfValue).strip();
            at = next(text, endOfValue);
            row += 2;
            int code;
            try {
                code = Integer.parseInt(codeText);
            } catch (NumberFormatException noCode) {
                throw new Refused("pattern.file.no_dxf", name, row - 1);
            }
            if (code == 0) {
                pairs = new ArrayList<>(8);
                things.add(new Thing(value, pairs));
            } else if (pairs != null) {
                pairs.add(new Pair(code, value));
            }
        }
        if (things.isEmpty()) {
            throw new Refused("pattern.file.no_dxf", name, 1);
        }
        return things;
    }

    private static int lineEnd(String text, int from) {
        for (int i = from; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\n' || c == '\r') {
                return i;
            }
        }
        return text.length();
    }

    private static int next(String text, int end) {
        if (end + 1 < text.length() && text.charAt(end) == '\r' && text.charAt(end + 1) == '\n') {
            return end + 2;
        }
        return end + 1;
    }
}
