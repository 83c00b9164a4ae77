package puzzleworkshop.orders.ui;

import java.time.Clock;
import java.time.LocalDate;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.artwork.PrintLimits;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.BoardChoice;
import puzzleworkshop.orders.Customers;
import puzzleworkshop.orders.ReadyDates;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.sheets.RackSettings;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/** Makes the parts of the New order page, each with the rooms it asks. */
@Component
class NewOrderParts {

    private final Pictures pictures;
    private final Customers customers;
    private final RackSettings rack;
    private final BoardChoice choice;
    private final Workshop workshop;
    private final RateBook book;
    private final Formatter figures;
    private final Clock clock;
    private final ObjectProvider<ReadyDates> readyDates;

    NewOrderParts(
            Pictures pictures,
            Customers customers,
            RackSettings rack,
            BoardChoice choice,
            Workshop workshop,
            RateBook book,
            Formatter figures,
            Clock clock,
            ObjectProvider<ReadyDates> readyDates) {
        this.pictures = pictures;
        this.customers = customers;
        this.rack = rack;
        this.choice = choice;
        this.workshop = workshop;
        this.book = book;
        this.figures = figures;
        this.clock = clock;
        this.readyDates = readyDates;
    }

    PicturePane picture(Runnable changed) {
        TradeNumbers numbers = workshop.tradeNumbers();
        PrintLimits limits = new PrintLimits(numbers.sharpPpi(), numbers.goodPpi(), numbers.softPpi());
        return new PicturePane(pictures, numbers.overhang(), limits, figures, changed);
    }

    WhoAndWhen whoAndWhen(Runnable changed) {
        return new WhoAndWhen(customers, figures, readyDates.getIfAvailable(), changed);
    }

    PuzzleForm puzzle(Runnable changed) {
        return new PuzzleForm(rack, choice, figures, changed);
    }

    BoardPane board(Runnable changed) {
        return new BoardPane(figures, changed);
    }

    PricePane price(Runnable changed) {
        return new PricePane(workshop, book, figures, changed);
    }

    ReadyPane ready(Runnable changed) {
        return new ReadyPane(figures, () -> LocalDate.now(clock.withZone(workshop.zone())), changed);
    }
}
