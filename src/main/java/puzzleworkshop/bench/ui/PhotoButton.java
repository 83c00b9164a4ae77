package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.upload.Upload;
import com.vaadin.flow.server.streams.UploadHandler;
import java.util.Optional;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.Order;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Stage;

/** Takes a photo with the phone's camera, or a file on a computer. */
class PhotoButton extends Upload {

    PhotoButton(Order order, Stage stage, Bench bench, Formatter figures, SignedIn signedIn, Runnable again) {
        // The name is asked for here: the upload itself arrives in a thread that knows nobody.
        String who = signedIn.name();
        setUploadHandler(UploadHandler.inMemory((metadata, content) -> getUI().ifPresent(ui ->
                ui.access(() -> Feedback.unlessRefused(figures, "bench.photo.kept", () -> {
                    bench.photo(order.id(), stage, Optional.empty(), content, who);
                    again.run();
                })))));
        Button press = new Button(getTranslation("bench.photo"));
        press.addClassName("bench-big");
        setUploadButton(press);
        setDropAllowed(false);
        setMaxFiles(1);
        setMaxFileSize(Photos.MOST_BYTES);
        setAcceptedMimeTypes("image/jpeg", "image/png", "image/webp");
        getElement().setAttribute("capture", "environment");
        addFileRejectedListener(e -> Feedback.tell(getTranslation("bench.photo.rejected"), true));
        addClassName("bench-photo");
    }
}
