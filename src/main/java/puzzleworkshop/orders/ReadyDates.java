package puzzleworkshop.orders;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.workshop.Stage;

/** Answers when new work can be ready; the planning room knows the waiting work and the calendar. */
public interface ReadyDates {

    Forecast forecast(NewWork work);

    /**
     * Work that is asked about and not yet taken on.
     *
     * @param hands minutes of hands for each stage that takes any
     * @param printer minutes of the printer
     * @param laser minutes of the laser, for all puzzles together
     * @param sameSettings names the board and settings, so that work with the same may share a set-up; may be empty
     * @param approvalOpen whether the customer must still approve the picture before printing
     */
    record NewWork(Map<Stage, Minutes> hands, Minutes printer, Minutes laser, String sameSettings, boolean approvalOpen) {}

    /**
     * @param ready the first day on which it can be handed over while every given promise is kept, buffer included
     * @param rush the first day if it goes before work that can wait; empty when that gains nothing
     * @param cause what the day hangs on, such as the laser being full until Friday
     */
    record Forecast(LocalDate ready, Optional<LocalDate> rush, Sentence cause) {}
}
