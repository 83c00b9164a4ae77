package puzzleworkshop.offers.ui;

import org.springframework.stereotype.Component;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.artwork.PrintLimits;
import puzzleworkshop.boards.BoardChoice;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.offers.Drafts;
import puzzleworkshop.orders.Customers;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.SignedIn;
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
    private final WeekPlan plan;
    private final SignedIn signedIn;
    private final Drafts drafts;

    NewOrderParts(
            Pictures pictures,
            Customers customers,
            RackSettings rack,
            BoardChoice choice,
            Workshop workshop,
            RateBook book,
            Formatter figures,
            WeekPlan plan,
            SignedIn signedIn,
            Drafts drafts) {
        this.drafts = drafts;
        this.pictures = pictures;
        this.customers = customers;
        this.rack = rack;
        this.choice = choice;
        this.workshop = workshop;
        this.book = book;
        this.figures = figures;
        this.plan = plan;
        this.signedIn = signedIn;
    }

    PicturePane picture(Runnable changed) {
        TradeNumbers numbers = workshop.tradeNumbers();
        PrintLimits limits = new PrintLimits(numbers.sharpPpi(), numbers.goodPpi(), numbers.softPpi());
        return new PicturePane(pictures, numbers.overhang(), limits, figures, changed);
    }

    WhoAndWhen whoAndWhen(Runnable changed) {
        return new WhoAndWhen(customers, figures, plan.ways(), changed);
    }

    DraftNotice draft(WhoAndWhen who, PicturePane picture) {
        return new DraftNotice(drafts, signedIn, figures, who, picture);
    }

    PuzzleForm puzzle(Runnable changed) {
        return new PuzzleForm(rack, choice, figures, workshop.tradeNumbers().smallestPiece(), changed);
    }

    BoardPane board(Runnable changed) {
        return new BoardPane(figures, changed);
    }

    PricePane price(Runnable changed) {
        return new PricePane(workshop, book, figures, signedIn.isOwner(), changed);
    }

    ReadyPane ready(Runnable changed) {
        return new ReadyPane(figures, () -> workshop.today(), changed);
    }
}
