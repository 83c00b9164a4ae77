package puzzleworkshop.delivery.ui;

import puzzleworkshop.orders.Order;

/** Lets a person write to a customer what happens to a parcel. The room of letters does it, which knows this one. */
public interface ParcelLetters {

    /** What there is to write. */
    enum Occasion {
        /** It waits to be collected. */
        READY,
        /** It still waits. */
        REMINDER,
        /** It is with the carrier. */
        SENT,
        /** It is there: thanks, and whether all is well. */
        ARRIVED,
        /** What is done about a complaint. */
        ANSWER
    }

    /**
     * Opens the letter for the occasion; the person changes it, and keeps, copies, shares or sends it, or closes it.
     *
     * @param written after it was kept or sent
     */
    void write(Order order, Occasion occasion, Runnable written);
}
