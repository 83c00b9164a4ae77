package puzzleworkshop.orders;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Sentence;

/** Answers when new work can be with the customer; the planning room knows the waiting work and the calendar. */
public interface ReadyDates {

    /** Empty when nobody works, so that no day can be given. */
    Optional<Forecast> forecast(NewWork work);

    /** The ways by which an order can reach its customer, the usual one first. */
    List<Way> ways();

    /**
     * Work that is asked about and not yet taken on.
     *
     * @param quantity puzzles
     * @param piecesEach pieces of one of them
     * @param laser time of the laser for all puzzles together
     * @param sameSettings names the board and its setting, so that work with the same may share a set-up
     * @param way by which it is delivered; absent: the usual one
     */
    record NewWork(int quantity, int piecesEach, Minutes laser, String sameSettings, Optional<Long> way) {}

    /**
     * @param ready the first day on which the customer can have it while every given promise is kept, buffer included
     * @param rush the first day if it goes before work that can wait; empty when that gains nothing
     * @param cause what the day hangs on, such as the laser being full until Friday
     */
    record Forecast(LocalDate ready, Optional<LocalDate> rush, Sentence cause) {}

    /** A way of delivery, such as collection or parcel post. */
    record Way(long id, String name) {}
}
