package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.html.Div;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.ui.CropEditor;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.ui.PatternDrawing;

/** The picture to be framed with the cut lines over it, or the lines on bare wood while there is no picture. */
class PuzzlePreview extends Div {

    private final CropEditor editor = new CropEditor();
    private final PatternDrawing wood = new PatternDrawing();
    private transient Optional<Picture> shown = Optional.empty();
    private transient Size finished = Size.mm(1, 1);
    private boolean showing;

    /** Hears where it is tapped: shares of the finished puzzle, from its top left corner. */
    interface Tapped {
        void at(double across, double down);
    }

    PuzzlePreview(Length overhang, Consumer<Crop> framed) {
        addClassName("neworder-preview");
        wood.addClassName("neworder-wood");
        editor.setOverhang(overhang);
        editor.setVisible(false);
        editor.addCropListener(crop -> {
            if (!showing) {
                framed.accept(crop);
            }
        });
        add(editor, wood);
    }

    void onTap(Tapped tapped) {
        editor.addTapListener(spot -> tapped.at(spot.across(), spot.down()));
        wood.onTap(where -> tapped.at(
                Math.clamp(where.xMm() / finished.width().mm(), 0, 1),
                Math.clamp(where.yMm() / finished.height().mm(), 0, 1)));
    }

    void show(Optional<Picture> picture, Offer offer) {
        finished = offer.wish().puzzle().finished();
        editor.setVisible(picture.isPresent());
        wood.setVisible(picture.isEmpty());
        showing = true;
        picture.ifPresent(p -> showPicture(p, offer));
        showing = false;
        if (picture.isEmpty()) {
            offer.pattern().ifPresent(pattern -> wood.show(pattern, ""));
        }
    }

    private void showPicture(Picture picture, Offer offer) {
        if (!shown.map(Picture::id).equals(Optional.of(picture.id()))) {
            editor.setPicture(picture);
            shown = Optional.of(picture);
        }
        editor.setFinishedSize(offer.wish().puzzle().finished());
        offer.wish()
                .picture()
                .map(FramedPicture::crop)
                .filter(crop -> !Optional.of(crop).equals(editor.getCrop()))
                .ifPresent(editor::setCrop);
        editor.setCutLines(offer.pattern().map(CutPattern::svgPathData).orElse(""));
        editor.setMarks(offer.wish().puzzle().layout().keptWhole().stream()
                .map(place -> place.outline().svgPathData())
                .collect(Collectors.joining()));
    }
}
