package puzzleworkshop.measure;

/**
 * An expected refusal: what was asked cannot be done, and the sentence says why and what to do. Rooms extend it where a
 * caller needs to tell refusals apart; anything else that is thrown is a fault of the program.
 */
public class Refused extends RuntimeException {

    private final transient Sentence sentence;

    public Refused(Sentence sentence) {
        super(sentence.key() + " " + sentence.arguments());
        this.sentence = sentence;
    }

    public Refused(String key, Object... arguments) {
        this(Sentence.of(key, arguments));
    }

    public Sentence sentence() {
        return sentence;
    }
}
