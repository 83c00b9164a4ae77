package puzzleworkshop.artwork.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.HasStyle;
import com.vaadin.flow.component.Tag;
import com.vaadin.flow.component.dependency.JavaScript;
import com.vaadin.flow.shared.Registration;
import java.util.function.Consumer;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** The drawing of the crop editor in the browser; see {@code crop-editor.js}. What it reports is not to be trusted. */
@Tag("artwork-crop-stage")
@JavaScript("context://crop-editor.js")
class CropStage extends Component implements HasStyle {

    private int round;

    /** What is shown. Numbers in the picture's pixels, fractions of it, and millimetres. */
    record Scene(
            Picture picture,
            String address,
            Crop crop,
            Size finished,
            Length overhang,
            String cutLines,
            String marks,
            String label) {}

    void show(Scene scene) {
        // A new round each time: reports still under way from the scene before are told apart and dropped.
        round++;
        ObjectNode text = JsonNodeFactory.instance.objectNode();
        text.put("round", round);
        text.put("label", scene.label());
        text.put("address", scene.address());
        text.put("width", scene.picture().width());
        text.put("height", scene.picture().height());
        text.put("turns", scene.crop().quarterTurns());
        text.put("fit", scene.crop().fit().name());
        text.put("border", scene.crop().borderColour());
        text.put("finishedWidth", scene.finished().width().mm());
        text.put("finishedHeight", scene.finished().height().mm());
        text.put("overhang", scene.overhang().mm());
        text.put("lines", scene.cutLines());
        text.put("marks", scene.marks());
        ObjectNode frame = text.putObject("frame");
        frame.put("left", scene.crop().left());
        frame.put("top", scene.crop().top());
        frame.put("width", scene.crop().width());
        frame.put("height", scene.crop().height());
        getElement().setProperty("scene", text.toString());
    }

    void clear() {
        round++;
        getElement().setProperty("scene", "");
    }

    /** A frame as reported: left, top, width, height in fractions of the turned picture. */
    record Frame(double left, double top, double width, double height) {}

    Registration addMoveListener(Consumer<Frame> listener) {
        return getElement()
                .addEventListener("crop-moved", event -> {
                    JsonNode told = event.getEventData();
                    if (told.path("event.detail.round").asInt(-1) != round) {
                        return;
                    }
                    listener.accept(new Frame(
                            told.path("event.detail.left").asDouble(Double.NaN),
                            told.path("event.detail.top").asDouble(Double.NaN),
                            told.path("event.detail.width").asDouble(Double.NaN),
                            told.path("event.detail.height").asDouble(Double.NaN)));
                })
                .addEventData("event.detail.round")
                .addEventData("event.detail.left")
                .addEventData("event.detail.top")
                .addEventData("event.detail.width")
                .addEventData("event.detail.height");
    }

    Registration addTapListener(Consumer<CropEditor.Tap> listener) {
        return getElement()
                .addEventListener("crop-tapped", event -> {
                    JsonNode told = event.getEventData();
                    double across = told.path("event.detail.across").asDouble(Double.NaN);
                    double down = told.path("event.detail.down").asDouble(Double.NaN);
                    if (across >= 0 && across <= 1 && down >= 0 && down <= 1) {
                        listener.accept(new CropEditor.Tap(across, down));
                    }
                })
                .addEventData("event.detail.across")
                .addEventData("event.detail.down");
    }
}
