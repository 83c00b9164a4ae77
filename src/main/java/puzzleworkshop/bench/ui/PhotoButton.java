package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.button.Button;
import java.util.Optional;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.orders.Order;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Stage;

/** Takes a photo with the phone's camera, or a file on a computer. */
class PhotoButton extends FileUpload {

    PhotoButton(Order order, Stage stage, Bench bench, Formatter figures, SignedIn signedIn, Runnable again) {
        // The name is asked for here: the upload itself arrives in a thread that knows nobody.
        this(order, stage, bench, figures, signedIn.name(), again);
    }

    private PhotoButton(Order order, Stage stage, Bench bench, Formatter figures, String who, Runnable again) {
        super(figures, Photos.MOST_BYTES, Feedback::refusal, file -> {
            byte[] content = file.content();
            return () -> {
                bench.photo(order.id(), stage, Optional.empty(), content, who);
                Feedback.tell(figures.text("bench.photo.kept"), false);
                again.run();
            };
        });
        Button press = new Button(getTranslation("bench.photo"));
        press.addClassName("bench-big");
        camera(press);
        setAcceptedMimeTypes("image/jpeg", "image/png", "image/webp");
        addClassName("bench-photo");
    }
}
