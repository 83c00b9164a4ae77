package puzzleworkshop.workshop.ui;

/**
 * What a workshop that starts empty has to write down before its first order can be priced and dated; beans of this type
 * make the list on the home screen, by place. The words are the texts {@code key} and {@code key.why}.
 */
public interface SetupStep {

    int place();

    /** Of the words: what to do, and with {@code .why} behind it, what hangs on it. */
    String key();

    /** Where it is done. */
    String path();

    boolean done();
}
