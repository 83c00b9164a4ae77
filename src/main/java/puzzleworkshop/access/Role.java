package puzzleworkshop.access;

/** What an account may do: an owner everything, a maker everything but money and set-up. */
public enum Role {
    OWNER,
    MAKER;

    public String textKey() {
        return "access.role." + name();
    }
}
