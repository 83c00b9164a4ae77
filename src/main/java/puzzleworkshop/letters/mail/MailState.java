package puzzleworkshop.letters.mail;

/** Where a letter is on its way out of the outbox. */
public enum MailState {
    /** To be sent at its next try. */
    WAITING,
    /** A try is under way. */
    CLAIMED,
    SENT,
    /** The server will not take it, or nobody answered for too long: somebody has to see to it. */
    FAILED,
    /** Cut off between handing it over and the server's answer: only a person can find out whether it arrived. */
    ASKS,
    /** Taken out by a person. */
    WITHDRAWN;

    public String textKey() {
        return "letters.mail." + name();
    }

    public boolean needsPerson() {
        return this == FAILED || this == ASKS;
    }
}
