package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Order;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.proofs.CustomerWish;
import puzzleworkshop.proofs.ProofWish;
import puzzleworkshop.proofs.Proofs;

/** What the customer of a quote marked on the picture or asked for, to be taken over into its form with one tap. */
class CustomerWishes extends Div {

    private final transient Proofs proofs;
    private final transient Pictures pictures;
    private final transient Formatter figures;

    /** A marked place as it lies on the puzzle. */
    record Place(KeptWhole kept, boolean along) {}

    /** What takes a wish over. */
    interface Taking {
        /** The finished size on the form, where it can be read. */
        Optional<Size> finished();

        void take(List<Place> places, Optional<Integer> years);
    }

    /** How the picture is framed for a size on the form; none while there is no picture. */
    interface Framed {
        Optional<FramedPicture> framed(Size finished);
    }

    CustomerWishes(Proofs proofs, Pictures pictures, Formatter figures) {
        this.proofs = proofs;
        this.pictures = pictures;
        this.figures = figures;
        addClassName("pw-stack");
    }

    /** Shows those of an order that nobody has seen to and that say more than words. */
    void show(Order order, Framed picture, Taking form) {
        removeAll();
        proofs.wishes(order.id()).stream()
                .filter(wish -> wish.settledBy().isEmpty() && wish.wish().isMoreThanWords())
                .forEach(wish -> add(note(wish, order, picture, form)));
    }

    private Div note(ProofWish wish, Order order, Framed picture, Taking form) {
        CustomerWish said = wish.wish();
        Paragraph words = new Paragraph(figures.text(
                "offers.wish",
                wish.at(),
                said.words(),
                said.places().size(),
                said.years().orElse(0)));
        Div note = new Div(words);
        note.addClassName("pw-note");
        note.getElement().setAttribute("data-kind", "warn");
        Button take = new Button(getTranslation("offers.wish.take"));
        take.addClassName("offers-wish-take");
        take.addClickListener(click -> {
            note.remove(take);
            Size finished = form.finished().orElse(order.puzzle().finished());
            List<Place> places = picture.framed(finished)
                    .map(framed -> places(wish, framed, finished))
                    .orElse(List.of());
            form.take(places, said.years());
            note.getElement().setAttribute("data-kind", "good");
            words.setText(figures.text(
                    "offers.wish.taken", places.size(), said.places().size() - places.size()));
        });
        note.add(take);
        return note;
    }

    /** None of them where they were marked on another picture. */
    private List<Place> places(ProofWish wish, FramedPicture framed, Size finished) {
        Optional<Picture> picture = pictures.find(framed.picture());
        Optional<PictureId> marked = wish.picture();
        if (picture.isEmpty() || !marked.equals(Optional.of(framed.picture()))) {
            return List.of();
        }
        return wish.wish().places().stream()
                .map(place -> new Place(place.on(finished, framed.crop(), picture.get()), place.along()))
                .filter(place -> place.kept().liesOn(finished))
                .toList();
    }
}
