package puzzleworkshop.delivery;

/** A carrier's number as it is typed or comes from a scanner. */
final class Tracking {

    private Tracking() {}

    /** Without what a scanner adds around it (group separators, line ends) and the spaces people write between its digits. */
    static String read(String typed) {
        return typed.replaceAll("[\\p{Cntrl}\\s]", "");
    }
}
