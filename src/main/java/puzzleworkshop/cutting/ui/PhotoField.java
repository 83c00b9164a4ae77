package puzzleworkshop.cutting.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.upload.Upload;
import com.vaadin.flow.server.streams.UploadHandler;
import java.util.Optional;
import puzzleworkshop.cutting.trials.Photo;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;

/** Takes one photo of a cut edge; on a phone the camera opens. */
class PhotoField extends Div {

    private final Upload upload;
    private Photo photo;

    PhotoField(Formatter figures) {
        addClassName("cutting-photo-field");
        upload = new Upload(UploadHandler.inMemory((metadata, bytes) -> {
            photo = Photo.of(bytes).orElse(null);
            if (photo == null) {
                Feedback.tell(figures.text("cutting.photo.type"), true);
            }
        }));
        upload.setMaxFiles(1);
        upload.setMaxFileSize(Photo.MOST_BYTES);
        upload.setAcceptedMimeTypes("image/jpeg", "image/png", "image/webp");
        upload.setDropAllowed(false);
        upload.setUploadButton(new Button(figures.text("cutting.photo.take")));
        upload.addFileRejectedListener(
                event -> Feedback.tell(figures.text("cutting.photo.size", Photo.MOST_BYTES / 1_000_000), true));
        upload.addFileRemovedListener(event -> photo = null);
        Span label = new Span(figures.text("cutting.photo.label"));
        label.addClassName("pw-small");
        add(label, upload);
    }

    Optional<Photo> photo() {
        return Optional.ofNullable(photo);
    }

    void clear() {
        photo = null;
        upload.clearFileList();
    }
}
