package puzzleworkshop.letters;

import puzzleworkshop.runtime.Change;

/** Told when a letter was written or the outbox moved, so that open screens can show it. */
public record LettersChanged() implements Change {}
