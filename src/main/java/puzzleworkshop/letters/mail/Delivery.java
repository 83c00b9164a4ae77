package puzzleworkshop.letters.mail;

/** How one try to hand a letter to the mail server ended. */
sealed interface Delivery {

    /** The server took it (reply 250 after its last line). */
    record Accepted() implements Delivery {}

    /** It was certainly not taken and may be tried again. */
    record NotYet(String fault) implements Delivery {}

    /** The server will not take it (reply 5xx): trying again changes nothing. */
    record Refusal(String fault) implements Delivery {}

    /** Its last line went out and no answer came: it may have been taken. */
    record Unclear(String fault) implements Delivery {}
}
