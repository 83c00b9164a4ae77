package puzzleworkshop.cutfiles.svg.values;

/** A value that does not follow its grammar, or that asks for something that is not interpreted. */
public final class Unreadable extends RuntimeException {

    private static final long serialVersionUID = 1;

    public Unreadable(String what) {
        super(what, null, false, false);
    }
}
