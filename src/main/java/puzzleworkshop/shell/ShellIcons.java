package puzzleworkshop.shell;

/** The few line drawings of the frame, in a box of 32. */
final class ShellIcons {

    /** One piece with a knob on its right side and a socket below: the mark of the program. */
    static final String PIECE = "<path d='M5 7h15v5.2c1-1.5 2.3-2.2 3.7-2.2 2.4 0 4.3 1.8 4.3 4s-1.9 4-4.3 4"
            + "c-1.4 0-2.7-.7-3.7-2.2V25h-5.4c1.5-.8 2.1-1.8 2.1-3 0-1.9-1.6-3.3-3.6-3.3s-3.6 1.4-3.6 3.3"
            + "c0 1.2.6 2.2 2.1 3H5Z' fill='currentColor'/>";

    private ShellIcons() {}

    static String ofRoute(String route) {
        String drawing = switch (route) {
            case "" -> "<path d='M5 8h22v19H5ZM5 13h22M11 5v5M21 5v5M12 20h8'/>";
            case "orders" -> "<path d='M6 6h20v20H6ZM11 12h10M11 16h10M11 20h6'/>";
            case "bench" -> "<path d='M4 18h24M7 18v9M25 18v9M11 11l4 4 7-9'/>";
            default -> "<path d='M5 7h22v18H18v-6H5ZM5 13h13v6'/>";
        };
        return "<svg viewBox='0 0 32 32' fill='none' stroke='currentColor' stroke-width='2' stroke-linejoin='round'"
                + " stroke-linecap='round' aria-hidden='true'>" + drawing + "</svg>";
    }
}
