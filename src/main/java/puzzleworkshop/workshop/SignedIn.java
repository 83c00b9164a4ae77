package puzzleworkshop.workshop;

/**
 * Who is at work in this thread: for history lines and for what only an owner sees. Background threads know nobody; who
 * starts one passes the name along.
 */
public interface SignedIn {

    /** Stands in the history for what the program did by itself. */
    String NOBODY = "Puzzle Workshop";

    /** The signed-in person's name, or {@link #NOBODY}. */
    String name();

    boolean isOwner();

    /** Whether somebody is signed in who is not an owner. Of nobody, the program itself or a customer, it is false. */
    boolean isMaker();
}
