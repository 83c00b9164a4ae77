package puzzleworkshop.letters.mail;

/** Takes a finished message to the mail server. */
interface Courier {

    /**
     * One try, in bounded time.
     *
     * @param message as RFC 5322 has it
     * @param lastLine run before the line that makes the server take the message; what it throws ends the try, and nothing
     *     was sent
     */
    Delivery deliver(byte[] message, Runnable lastLine);
}
