package puzzleworkshop.offers.ui;

import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.artwork.PrintLimits;
import puzzleworkshop.boards.BoardChoice;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.Drafts;
import puzzleworkshop.orders.Customers;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.preview.PictureEdges;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.shapes.PictureContour;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.printing.media.PrintMedia;
import puzzleworkshop.proofs.Proofs;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/** Makes the parts of the New order page, each with the rooms it asks. */
@Component
class NewOrderParts {

    private final Pictures pictures;
    private final PrintMedia media;
    private final Customers customers;
    private final RackSettings rack;
    private final BoardChoice choice;
    private final Workshop workshop;
    private final RateBook book;
    private final Formatter figures;
    private final WeekPlan plan;
    private final SignedIn signedIn;
    private final Drafts drafts;
    private final Proofs proofs;
    private final PictureEdges edges;

    NewOrderParts(
            Pictures pictures,
            PrintMedia media,
            Customers customers,
            RackSettings rack,
            BoardChoice choice,
            Workshop workshop,
            RateBook book,
            Formatter figures,
            WeekPlan plan,
            SignedIn signedIn,
            Drafts drafts,
            Proofs proofs,
            PictureEdges edges) {
        this.proofs = proofs;
        this.edges = edges;
        this.drafts = drafts;
        this.pictures = pictures;
        this.media = media;
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
        return new PicturePane(pictures, media, numbers.overhang(), limits, figures, changed);
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

    CustomerWishes wishes() {
        return new CustomerWishes(proofs, pictures, figures);
    }

    /** The picture's own edge at a marked place; none while there is no picture. */
    Optional<PictureContour> edgeOf(KeptWhole place, Optional<FramedPicture> framed, Size finished) {
        return framed.map(picture -> edges.around(place, picture, finished));
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
