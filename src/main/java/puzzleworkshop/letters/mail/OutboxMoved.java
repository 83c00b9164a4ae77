package puzzleworkshop.letters.mail;

import puzzleworkshop.runtime.Change;

/** Told when letters came into the outbox, left it, or met with a fault. */
public record OutboxMoved() implements Change {}
