package puzzleworkshop.cutfiles.svg.values;

/** Reads numbers and words from a text as SVG and CSS write them, in one pass. */
public final class Scanner {

    /** No drawing needs more digits; what has more is no number but an attack on whoever reads it. */
    private static final int LONGEST_NUMBER = 400;

    private final String text;
    private int at;

    public Scanner(String text) {
        this.text = text;
    }

    public boolean atEnd() {
        return at >= text.length();
    }

    char peek() {
        return at < text.length() ? text.charAt(at) : 0;
    }

    char take() {
        return text.charAt(at++);
    }

    boolean skip(char wanted) {
        if (peek() == wanted) {
            at++;
            return true;
        }
        return false;
    }

    public void skipBlanks() {
        while (at < text.length() && isBlank(text.charAt(at))) {
            at++;
        }
    }

    /** Blanks with at most one comma among them. */
    public void skipComma() {
        skipBlanks();
        if (skip(',')) {
            skipBlanks();
        }
    }

    public static boolean isBlank(char c) {
        return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f';
    }

    public boolean atNumber() {
        int i = at;
        if (i < text.length() && (text.charAt(i) == '+' || text.charAt(i) == '-')) {
            i++;
        }
        if (i < text.length() && text.charAt(i) == '.') {
            i++;
        }
        return i < text.length() && isDigit(text.charAt(i));
    }

    /** Reads as far as the grammar of numbers goes: '60-5' are two, '1.5.5' are two. */
    public double number() {
        if (!atNumber()) {
            throw new Unreadable("no number");
        }
        int start = at;
        if (peek() == '+' || peek() == '-') {
            at++;
        }
        digits();
        // '10.' is no number of today's grammar but of SVG 1.1's
        if (skip('.')) {
            digits();
        }
        if (peek() == 'e' || peek() == 'E') {
            int sign = at + 1 < text.length() && (text.charAt(at + 1) == '+' || text.charAt(at + 1) == '-') ? 1 : 0;
            if (at + 1 + sign < text.length() && isDigit(text.charAt(at + 1 + sign))) {
                at += 1 + sign;
                digits();
            }
        }
        if (at - start > LONGEST_NUMBER) {
            throw new Unreadable("a number of " + (at - start) + " digits");
        }
        return Double.parseDouble(text.substring(start, at));
    }

    private void digits() {
        while (at < text.length() && isDigit(text.charAt(at))) {
            at++;
        }
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    /** A flag of an arc: one digit, which may touch its neighbours. */
    boolean flag() {
        char c = peek();
        if (c != '0' && c != '1') {
            throw new Unreadable("no flag");
        }
        at++;
        return c == '1';
    }

    /** Letters, digits and hyphens, or a sign of percent. */
    public String word() {
        int start = at;
        if (skip('%')) {
            return "%";
        }
        while (at < text.length() && (Character.isLetterOrDigit(text.charAt(at)) || text.charAt(at) == '-')) {
            at++;
        }
        return text.substring(start, at);
    }
}
