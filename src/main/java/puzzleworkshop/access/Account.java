package puzzleworkshop.access;

/**
 * One person who may sign in. Accounts are never deleted, since the history names them; one that is not active cannot
 * sign in.
 *
 * @param name to sign in with, unique without regard to case; also what the history shows
 */
public record Account(AccountId id, String name, Role role, boolean active) {

    /** Which account; never shown to people. */
    public record AccountId(long value) {}
}
