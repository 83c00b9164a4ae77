package puzzleworkshop.artwork.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Input;
import com.vaadin.flow.component.html.NativeLabel;
import com.vaadin.flow.component.icon.VaadinIcon;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.shared.Registration;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.Rendition;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.pixels.Crop.Edge;
import puzzleworkshop.artwork.pixels.Crop.Fit;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * A picture with the frame that becomes the puzzle: drag, resize, pinch or arrow keys; turn; fill or fit. It always holds a
 * crop of the finished aspect once it has a picture and a size; listeners hear of every change, while dragging some times a
 * second.
 */
@StyleSheet("context://artwork.css")
public class CropEditor extends Div {

    private static final Pattern PATH_DATA = Pattern.compile("[MmLlHhVvCcSsQqTtAaZz0-9eE.,+\\-\\s]*");

    private final CropStage stage = new CropStage();
    private final Div tools = new Div();
    private final Select<Fit> fit = new Select<>();
    private final Select<Edge> edge = new Select<>();
    private final Input colour = new Input();
    private final NativeLabel colourLabel = new NativeLabel();
    private final CopyOnWriteArrayList<Consumer<Crop>> listeners = new CopyOnWriteArrayList<>();

    private Picture picture;
    private String address;
    private Size finished = Size.mm(300, 200);
    private Length overhang = Length.mm(3);
    private String cutLines = "";
    private String marks = "";
    private Crop crop;
    private boolean filling;

    public CropEditor() {
        addClassName("artwork-crop");
        tools.addClassName("artwork-crop-tools");
        tools.add(turns(), fit(), edge(), border());
        add(stage, tools);
        stage.addMoveListener(this::moved);
        show();
    }

    /** Shows a picture, or none. It is framed to fill the finished size; call {@link #setCrop} afterwards for another. */
    public void setPicture(Picture picture) {
        setPicture(picture, picture == null ? "" : Rendition.address(picture.id(), 1600));
    }

    /** The same with an address of its own, for pages whose pictures are not fetched by id. */
    public void setPicture(Picture picture, String address) {
        this.picture = picture;
        this.address = address;
        this.crop = picture == null ? null : Crop.filling(picture, finished.aspect());
        show();
        tell();
    }

    public void setFinishedSize(Size finished) {
        if (finished.equals(this.finished)) {
            return;
        }
        this.finished = finished;
        this.cutLines = "";
        if (crop != null) {
            crop = matched(crop);
        }
        show();
        tell();
    }

    public void setOverhang(Length overhang) {
        if (overhang.equals(this.overhang)) {
            return;
        }
        this.overhang = overhang;
        show();
    }

    /** Frames the picture so; a crop of another aspect is brought to the finished one. */
    public void setCrop(Crop crop) {
        if (picture == null) {
            throw new IllegalStateException("There is no picture to frame");
        }
        if (crop.equals(this.crop)) {
            return;
        }
        this.crop = crop.hasAspect(picture, finished.aspect()) ? crop : matched(crop);
        show();
        tell();
    }

    /** Present as soon as there is a picture. */
    public Optional<Crop> getCrop() {
        return Optional.ofNullable(crop);
    }

    /**
     * Draws lines over the frame.
     *
     * @param svgPathData in millimetres of the finished size, origin at its upper left corner; empty for none
     */
    public void setCutLines(String svgPathData) {
        if (!PATH_DATA.matcher(svgPathData).matches()) {
            throw new IllegalArgumentException("Not the data of an SVG path");
        }
        // Screens set the same lines again with every answer; drawing anew would end a drag that is under way.
        if (svgPathData.equals(cutLines)) {
            return;
        }
        cutLines = svgPathData;
        show();
    }

    /**
     * Draws places over the frame that no line may cut, dashed.
     *
     * @param svgPathData as of {@link #setCutLines}
     */
    public void setMarks(String svgPathData) {
        if (!PATH_DATA.matcher(svgPathData).matches()) {
            throw new IllegalArgumentException("Not the data of an SVG path");
        }
        if (!svgPathData.equals(marks)) {
            marks = svgPathData;
            show();
        }
    }

    /** Where the frame was tapped, in shares of it, 0 to 1. */
    public record Tap(double across, double down) {}

    /** Hears where the frame is tapped: pressed and let go without moving it. */
    public Registration addTapListener(Consumer<Tap> listener) {
        return stage.addTapListener(listener);
    }

    /** Hears of every change of the crop, by hand or by a setter. */
    public Registration addCropListener(Consumer<Crop> listener) {
        listeners.add(listener);
        return () -> listeners.remove(listener);
    }

    private Div turns() {
        Div turns = new Div(
                turn(VaadinIcon.ROTATE_LEFT, "artwork.crop.turn-left", 3),
                turn(VaadinIcon.ROTATE_RIGHT, "artwork.crop.turn-right", 1));
        turns.addClassName("artwork-crop-turns");
        return turns;
    }

    private Button turn(VaadinIcon icon, String key, int turns) {
        Button button =
                new Button(icon.create(), click -> change(refilled((crop.quarterTurns() + turns) % 4, crop.fit())));
        button.setAriaLabel(getTranslation(key));
        button.setTooltipText(getTranslation(key));
        button.addThemeVariants(ButtonVariant.LUMO_ICON);
        return button;
    }

    private Select<Fit> fit() {
        fit.setItems(Fit.values());
        fit.setItemLabelGenerator(value -> getTranslation("artwork.crop.fit." + value.name()));
        fit.setAriaLabel(getTranslation("artwork.crop.fit"));
        fit.addValueChangeListener(event -> {
            if (!filling && event.getValue() != null) {
                change(refilled(crop.quarterTurns(), event.getValue()));
            }
        });
        return fit;
    }

    private Select<Edge> edge() {
        edge.setItems(Edge.values());
        edge.setItemLabelGenerator(value -> getTranslation("artwork.crop.edge." + value.name()));
        edge.setAriaLabel(getTranslation("artwork.crop.edge"));
        edge.addValueChangeListener(event -> {
            if (!filling && event.getValue() != null) {
                change(with(crop.borderColour(), event.getValue()));
            }
        });
        return edge;
    }

    private NativeLabel border() {
        colour.setType("color");
        colour.addValueChangeListener(event -> {
            if (!filling && event.getValue() != null && event.getValue().matches("#[0-9a-f]{6}")) {
                change(with(event.getValue(), crop.edge()));
            }
        });
        colourLabel.setText(getTranslation("artwork.crop.border"));
        colourLabel.add(colour);
        colourLabel.addClassName("artwork-crop-colour");
        return colourLabel;
    }

    private Crop with(String borderColour, Edge newEdge) {
        return new Crop(
                crop.left(),
                crop.top(),
                crop.width(),
                crop.height(),
                crop.quarterTurns(),
                crop.fit(),
                borderColour,
                newEdge);
    }

    private Crop refilled(int quarterTurns, Fit newFit) {
        Crop fresh = newFit == Fit.FILL
                ? Crop.filling(picture, finished.aspect(), quarterTurns)
                : Crop.fitting(picture, finished.aspect(), quarterTurns, crop.borderColour());
        return new Crop(
                fresh.left(),
                fresh.top(),
                fresh.width(),
                fresh.height(),
                quarterTurns,
                newFit,
                crop.borderColour(),
                crop.edge());
    }

    /** Very long pictures and very wide frames can have no crop in common with each other; start over then. */
    private Crop matched(Crop other) {
        try {
            return other.matched(picture, finished.aspect());
        } catch (IllegalArgumentException outside) {
            return Crop.filling(picture, finished.aspect(), other.quarterTurns());
        }
    }

    /** A frame from the browser: taken when it is possible and of the right aspect, else the browser is put right. */
    private void moved(CropStage.Frame frame) {
        if (picture == null) {
            return;
        }
        try {
            Crop wanted = new Crop(
                    frame.left(),
                    frame.top(),
                    frame.width(),
                    frame.height(),
                    crop.quarterTurns(),
                    crop.fit(),
                    crop.borderColour(),
                    crop.edge());
            if (wanted.hasAspect(picture, finished.aspect())) {
                crop = wanted;
                tell();
                return;
            }
        } catch (IllegalArgumentException impossible) {
            // Shown again below as it was.
        }
        show();
    }

    private void change(Crop wanted) {
        crop = wanted;
        show();
        tell();
    }

    private void tell() {
        if (crop != null) {
            listeners.forEach(listener -> listener.accept(crop));
        }
    }

    private void show() {
        boolean any = picture != null;
        stage.setVisible(any);
        tools.setVisible(any);
        if (!any) {
            stage.clear();
            return;
        }
        filling = true;
        fit.setValue(crop.fit());
        edge.setValue(crop.edge());
        colour.setValue(crop.borderColour());
        filling = false;
        edge.setVisible(crop.fit() == Fit.FILL);
        colourLabel.setVisible(crop.fit() == Fit.FIT);
        stage.show(new CropStage.Scene(
                picture, address, crop, finished, overhang, cutLines, marks, getTranslation("artwork.crop.stage")));
    }
}
