package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Image;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import java.io.ByteArrayInputStream;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.workshop.SignedIn;

/** The photo of a sheet, and taking or choosing another. */
public class SheetPhoto extends Div {

    public SheetPhoto(Sheet sheet, SheetRack rack, SignedIn who, Formatter figures, Runnable changed) {
        if (sheet.hasPhoto()) {
            Image image = new Image(
                    DownloadHandler.fromInputStream(event -> {
                        byte[] jpeg = rack.photo(sheet.id()).orElse(new byte[0]);
                        return new DownloadResponse(
                                new ByteArrayInputStream(jpeg), "sheet.jpg", "image/jpeg", jpeg.length);
                    }),
                    figures.text("sheets.photo.of", sheet.id().toString()));
            image.addClassName("sheets-photo");
            add(image);
        }
        String name = who.name();
        FileUpload upload = new FileUpload(figures, Photos.MOST_BYTES, Feedback::refusal, file -> {
                    byte[] photo = file.content();
                    return () -> {
                        rack.photo(sheet.id(), photo, name);
                        Feedback.tell(figures.text("sheets.photo.kept"), false);
                        changed.run();
                    };
                })
                .camera(new Button(figures.text("sheets.photo.take")));
        upload.setAcceptedMimeTypes("image/*");
        add(upload);
    }
}
