package puzzleworkshop.cutfiles.svg.values;

import java.util.ArrayList;
import java.util.List;

/** Cuts the text of a style sheet apart without being misled by strings, brackets and comments (CSS Syntax level 3). */
public final class CssText {

    private CssText() {}

    public static String withoutComments(String text) {
        if (!text.contains("/*") && !text.contains("<!--")) {
            return text;
        }
        StringBuilder plain = new StringBuilder(text.length());
        int at = 0;
        while (at < text.length()) {
            char c = text.charAt(at);
            if (c == '"' || c == '\'') {
                int end = Math.min(text.length(), endOfString(text, at) + 1);
                plain.append(text, at, end);
                at = end;
            } else if (text.startsWith("/*", at)) {
                int end = text.indexOf("*/", at + 2);
                plain.append(' ');
                at = end < 0 ? text.length() : end + 2;
            } else if (text.startsWith("<!--", at)) {
                at += 4;
            } else if (text.startsWith("-->", at)) {
                at += 3;
            } else {
                plain.append(c);
                at++;
            }
        }
        return plain.toString();
    }

    /** Where the string that begins here ends; the text's end where it never does. */
    private static int endOfString(String text, int start) {
        char quote = text.charAt(start);
        for (int i = start + 1; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\\') {
                i++;
            } else if (c == quote || c == '\n') {
                return i;
            }
        }
        return text.length();
    }

    /** The first of these signs outside of strings and brackets; the text's length where there is none. */
    public static int find(String text, int from, String wanted) {
        int depth = 0;
        for (int i = from; i < text.length(); i++) {
            char c = text.charAt(i);
            if (depth == 0 && wanted.indexOf(c) >= 0) {
                return i;
            }
            switch (c) {
                case '"', '\'' -> i = endOfString(text, i);
                case '\\' -> i++;
                case '(', '[', '{' -> depth++;
                case ')', ']', '}' -> depth = Math.max(0, depth - 1);
                default -> {
                    // everything else stands for itself
                }
            }
        }
        return text.length();
    }

    /** @throws Unreadable where it never closes */
    public static int closing(String text, int from, char close) {
        int end = find(text, from, String.valueOf(close));
        if (end == text.length()) {
            throw new Unreadable("never closed: " + close);
        }
        return end;
    }

    public static List<String> split(String text, char at) {
        List<String> parts = new ArrayList<>();
        int start = 0;
        while (start <= text.length()) {
            int end = find(text, start, String.valueOf(at));
            parts.add(text.substring(start, end));
            start = end + 1;
        }
        return parts;
    }

    public static String unquoted(String text) {
        boolean quoted = text.length() > 1
                && (text.charAt(0) == '"' || text.charAt(0) == '\'')
                && text.charAt(text.length() - 1) == text.charAt(0);
        return quoted ? text.substring(1, text.length() - 1) : text;
    }
}
