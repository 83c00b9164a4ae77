package puzzleworkshop.orders.ui;

import com.vaadin.flow.component.html.Div;
import java.util.Optional;
import java.util.function.Consumer;
import puzzleworkshop.artwork.Crop;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.Rendition;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Offer;

/** The framed picture to scale with the cut lines over it, or the lines on bare wood while there is no picture. */
class PuzzlePreview extends Div {

    private final SvgBox drawing = new SvgBox("neworder-drawing");

    PuzzlePreview() {
        addClassName("neworder-preview");
        add(drawing);
    }

    void onCrop(Consumer<Crop> listener) {
        // the crop editor tells its changes here
    }

    void show(Optional<Picture> picture, Offer offer) {
        Size size = offer.wish().finished();
        double width = size.width().mm();
        double height = size.height().mm();
        Svg svg = Svg.of(-2, -2, width + 4, height + 4, getTranslation("orders.new.preview"), getTranslation("orders.new.preview"));
        svg.raw("<clipPath id='finished'><rect width='" + Svg.n(width) + "' height='" + Svg.n(height) + "'/></clipPath>");
        svg.rect(0, 0, width, height, "neworder-wood");
        if (picture.isPresent() && offer.wish().picture().isPresent()) {
            Crop crop = offer.wish().picture().get().crop();
            image(svg, picture.get(), crop, width, height);
        }
        offer.pattern().ifPresent(pattern -> svg.path(pattern.svgPathData(), "neworder-lines-under")
                .path(pattern.svgPathData(), "neworder-lines"));
        drawing.draw(svg);
    }

    private void image(Svg svg, Picture picture, Crop crop, double width, double height) {
        double turnedWidth = width / crop.width();
        double turnedHeight = height / crop.height();
        boolean upright = crop.quarterTurns() % 2 == 0;
        double ownWidth = upright ? turnedWidth : turnedHeight;
        double ownHeight = upright ? turnedHeight : turnedWidth;
        svg.raw("<g clip-path='url(#finished)'><g transform='translate(" + Svg.n(-crop.left() * turnedWidth + turnedWidth / 2)
                + " " + Svg.n(-crop.top() * turnedHeight + turnedHeight / 2) + ") rotate(" + crop.quarterTurns() * 90
                + ")'><image x='" + Svg.n(-ownWidth / 2) + "' y='" + Svg.n(-ownHeight / 2) + "' width='" + Svg.n(ownWidth)
                + "' height='" + Svg.n(ownHeight) + "' preserveAspectRatio='none' href='"
                + Rendition.address(picture.id(), 1600) + "'/></g></g>");
    }
}
