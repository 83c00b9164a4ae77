package puzzleworkshop.display;

/** A verdict: a word with its icon and colour, never a colour alone. */
public class Verdict extends Still {

    /** What a verdict means, whatever it is about. */
    public enum Kind {
        GOOD("good", "<path d='M3 8.5l3.2 3.2L13 4.8' fill='none' stroke='currentColor' stroke-width='2'/>"),
        WARN(
                "warn",
                "<path d='M8 2L15 14H1Z' fill='none' stroke='currentColor' stroke-width='1.6' stroke-linejoin='round'/>"
                        + "<path d='M8 6.5v3.5M8 11.4v1.2' stroke='currentColor' stroke-width='1.6'/>"),
        BAD(
                "bad",
                "<circle cx='8' cy='8' r='6.5' fill='none' stroke='currentColor' stroke-width='1.6'/>"
                        + "<path d='M5.5 5.5l5 5M10.5 5.5l-5 5' stroke='currentColor' stroke-width='1.6'/>"),
        WAIT(
                "wait",
                "<circle cx='8' cy='8' r='6.5' fill='none' stroke='currentColor' stroke-width='1.6'/>"
                        + "<path d='M8 4.2V8l2.6 1.8' fill='none' stroke='currentColor' stroke-width='1.6'/>");

        private final String name;
        private final String icon;

        Kind(String name, String icon) {
            this.name = name;
            this.icon = icon;
        }
    }

    public Verdict(Kind kind, String word) {
        super(of(kind, word));
    }

    /** The same within what only stands there. */
    public static Markup of(Kind kind, String word) {
        return Markup.of(
                        "span",
                        "pw-verdict",
                        Markup.mark("<svg viewBox='0 0 16 16' aria-hidden='true'>" + kind.icon + "</svg>"),
                        Markup.span(word))
                .with("data-kind", kind.name);
    }
}
