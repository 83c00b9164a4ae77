package puzzleworkshop.printing;

/** Who is told what became of an order's prints. Kept by the bench, which moves orders from stage to stage. */
public interface PrintTold {

    /** All prints of an order are made: the order goes on to the next stage. */
    void printed(long orderId, String who);

    /** A print of an order was spoiled after it was booked as good: the order goes back to the print. */
    void spoiled(long orderId, int copy, String reason, String who);
}
