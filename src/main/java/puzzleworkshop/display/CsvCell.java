package puzzleworkshop.display;

/**
 * Text in a table that somebody opens with a spreadsheet. What a spreadsheet takes for a formula gets an apostrophe before
 * it, in every line of the text: some programs take a line break for a new cell (OWASP, CSV Injection).
 */
public final class CsvCell {

    private static final String FORMULA = "(?m)^(?=[=+\\-@\\t\\r\\uFF1D\\uFF0B\\uFF0D\\uFF20])";

    private CsvCell() {}

    public static String guarded(Object text) {
        return String.valueOf(text).replaceAll(FORMULA, "'");
    }

    /** The text that was guarded. */
    public static String unguarded(String cell) {
        return cell.replaceAll("(?m)^'(?=[=+\\-@\\t\\r\\uFF1D\\uFF0B\\uFF0D\\uFF20])", "");
    }
}
