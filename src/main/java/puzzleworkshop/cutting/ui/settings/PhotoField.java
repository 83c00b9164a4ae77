package puzzleworkshop.cutting.ui.settings;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.util.Optional;
import puzzleworkshop.cutting.settings.TrialPhoto;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.measure.Refused;

/** Takes one photo of a cut edge; on a phone the camera opens. */
class PhotoField extends Div {

    private final Span there = new Span();
    private TrialPhoto photo;

    PhotoField(Formatter figures) {
        addClassName("cutting-photo-field");
        FileUpload upload = new FileUpload(figures, TrialPhoto.MOST_BYTES, Feedback::refusal, file -> {
            TrialPhoto taken = TrialPhoto.of(file.content()).orElseThrow(() -> new Refused("cutting.photo.type"));
            return () -> {
                photo = taken;
                there.setText(figures.text("cutting.photo.there"));
            };
        });
        upload.camera(new Button(figures.text("cutting.photo.take")));
        upload.setAcceptedMimeTypes("image/jpeg", "image/png", "image/webp");
        Span label = new Span(figures.text("cutting.photo.label"));
        label.addClassName("pw-small");
        there.getElement().setAttribute("role", "status");
        add(label, upload, there);
    }

    Optional<TrialPhoto> photo() {
        return Optional.ofNullable(photo);
    }

    void clear() {
        photo = null;
        there.setText("");
    }
}
