package puzzleworkshop.access;

import puzzleworkshop.measure.Sentence;

/**
 * A made-up workshop to look around in: sheets, supplies, a machine, orders at every stage. Implemented by the room that
 * knows all the others; where there is none, the first steps do not offer it.
 */
public interface DemoWorkshop {

    /** Fills an empty workshop. Called once, after the profile was saved, outside a screen's thread; takes seconds. */
    void fill(Progress progress);

    /** Told now and then how far it is. */
    @FunctionalInterface
    interface Progress {

        /**
         * @param share done, 0 to 1
         * @param what is being made now
         */
        void reached(double share, Sentence what);
    }
}
