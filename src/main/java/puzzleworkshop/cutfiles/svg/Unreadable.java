package puzzleworkshop.cutfiles.svg;

/** A value that does not follow its grammar, or that asks for something that is not interpreted. */
final class Unreadable extends RuntimeException {

    private static final long serialVersionUID = 1;

    Unreadable(String what) {
        super(what, null, false, false);
    }
}
